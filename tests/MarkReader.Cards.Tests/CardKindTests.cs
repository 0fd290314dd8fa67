using MarkReader.Quantities;

namespace MarkReader.Cards.Tests;

public sealed class CardKindTests
{
    public static TheoryData<string> Kinds { get; } = new(CardKinds.All.Select(k => k.Name));

    [Fact]
    public void There_is_a_small_card_for_a_plate_and_a_larger_one_for_the_bed()
    {
        Assert.Equal(["plate", "bed"], CardKinds.All.Select(k => k.Name));
        CardKind plate = CardKinds.Find(CardKinds.Default)!;
        Assert.True(plate.OuterSide <= 50, $"{plate.OuterSide} mm");
        Assert.True(plate.ZoneSide >= 20, $"{plate.ZoneSide} mm");
        Assert.True(CardKinds.Find("bed")!.OuterSide > plate.OuterSide);
        Assert.Null(CardKinds.Find("other"));
    }

    [Fact]
    public void A_markers_id_stands_once_and_tells_the_kind()
    {
        (int Id, CardKind Kind)[] all = [.. CardKinds.All.SelectMany(k => k.Markers.Select(m => (m.Id, k)))];
        Assert.Equal(16, all.Length);
        Assert.Equal(all.Length, all.Select(a => a.Id).Distinct().Count());
        Assert.All(all, a => Assert.Same(a.Kind, CardKinds.OfMarker(a.Id)));
        Assert.Null(CardKinds.OfMarker(49));
    }

    [Fact]
    public void No_two_markers_look_alike_however_they_are_turned()
    {
        MarkerPattern[] patterns = [.. CardKinds.All.SelectMany(k => k.Markers.Select(m => m.Pattern))];
        for (int i = 0; i < patterns.Length; i++)
        {
            for (int j = 0; j < patterns.Length; j++)
            {
                for (int quarters = i == j ? 1 : 0; quarters < 4; quarters++)
                    Assert.True(Distance(patterns[i], patterns[j], quarters) >= 3, $"markers {i} and {j}, {quarters} quarter turns");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Markers_stand_all_round_the_zone_so_that_any_three_enclose_an_area(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        Assert.Equal(8, kind.Markers.Count);
        double[] directions = [.. kind.Markers.Select(m => Math.Atan2(m.Centre.V, m.Centre.U) * 180 / Math.PI).Order()];
        double[] gaps = [.. directions.Select((d, i) => i == 0 ? d - directions[^1] + 360 : d - directions[i - 1])];
        Assert.All(gaps, gap => Assert.InRange(gap, 1, 60));
        foreach (CardMarker a in kind.Markers)
        {
            foreach (CardMarker b in kind.Markers.Where(m => m.Id > a.Id))
            {
                // Twelve corners of three markers: never all near one line.
                Assert.All(kind.Markers.Where(m => m.Id > b.Id), c => Assert.True(Width([.. a.Corners, .. b.Corners, .. c.Corners]) >= 0.99 * a.Side));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Rulers_run_both_ways_and_their_labels_say_their_length(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        Assert.Equal(2, kind.Rulers.Count);
        Assert.Equal(0, kind.Rulers[0].From.V - kind.Rulers[0].To.V);
        Assert.Equal(0, kind.Rulers[1].From.U - kind.Rulers[1].To.U);
        Assert.Equal(kind.Rulers.Select(r => $"{r.From.DistanceTo(r.To):0} mm"), kind.Labels.Select(l => l.Text));
        Assert.All(kind.Rulers, r => Assert.Equal(0, Math.IEEERemainder(r.From.DistanceTo(r.To), r.Step), 1e-9));
    }

    /// <summary>Cells in which a pattern differs from another turned by quarter turns.</summary>
    private static int Distance(MarkerPattern a, MarkerPattern b, int quarters)
    {
        int count = 0;
        int last = a.CellsWithBorder - 1;
        for (int row = 0; row <= last; row++)
        {
            for (int column = 0; column <= last; column++)
            {
                (int c, int r) = quarters switch
                {
                    0 => (column, row),
                    1 => (row, last - column),
                    2 => (last - column, last - row),
                    _ => (last - row, column),
                };
                if (a.IsWhite(column, row) != b.IsWhite(c, r))
                    count++;
            }
        }

        return count;
    }

    /// <summary>The smallest width of a set of points over all directions, by steps of one degree.</summary>
    private static double Width(CardPoint[] points) => Enumerable.Range(0, 180).Min(degree =>
    {
        (double sin, double cos) = Math.SinCos(degree * Math.PI / 180);
        double[] along = [.. points.Select(p => (p.U * cos) + (p.V * sin))];
        return along.Max() - along.Min();
    });
}
