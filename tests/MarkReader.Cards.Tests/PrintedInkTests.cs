using MarkReader.Quantities;

namespace MarkReader.Cards.Tests;

public sealed class PrintedInkTests
{
    public static TheoryData<string> Kinds { get; } = new(CardKinds.All.Select(k => k.Name));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void All_ink_lies_between_the_zone_and_the_outline(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        IReadOnlyList<IReadOnlyList<CardPoint>> polygons = PrintedInk.Polygons(kind);
        Assert.True(polygons.Count > 60, $"{polygons.Count} polygons");
        Assert.All(polygons, polygon =>
        {
            Assert.True(Shapes.Box(polygon).InsideSquare(kind.OuterSide / 2), "ink beyond the outline");
            Assert.False(Shapes.MeetsSquare(polygon, kind.ZoneSide / 2), "ink in the free zone");
        });
        foreach (CardLabel label in kind.Labels)
        {
            Box box = Shapes.LabelBox(label);
            Assert.True(box.InsideSquare(kind.OuterSide / 2));
            Assert.False(Shapes.MeetsSquare(box.Corners, kind.ZoneSide / 2));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_marker_has_a_quiet_zone_of_half_a_cell(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        IReadOnlyList<CardPoint>[] others = [.. PrintedInk.Polygons(kind), .. kind.Labels.Select(l => Shapes.LabelBox(l).Corners)];
        foreach (CardMarker marker in kind.Markers)
        {
            Box own = Shapes.Box(marker.Corners);
            Box quiet = own.Grown((marker.Side / marker.Pattern.CellsWithBorder / 2) - 1e-9);
            Assert.True(quiet.InsideSquare(kind.OuterSide / 2), $"marker {marker.Id} at the outline");
            Assert.DoesNotContain(others, polygon => quiet.Meets(Shapes.Box(polygon)) && !own.Holds(Shapes.Box(polygon)));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_patch_has_white_round_it_for_its_edges(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        IReadOnlyList<CardPoint>[] others = [.. PrintedInk.Polygons(kind), .. kind.Labels.Select(l => Shapes.LabelBox(l).Corners)];
        foreach (ChessPatch patch in kind.Patches)
        {
            Box own = new(patch.UpperLeft.U, patch.UpperLeft.V - (patch.Rows * patch.Square), patch.UpperLeft.U + (patch.Columns * patch.Square), patch.UpperLeft.V);
            Box free = own.Grown(patch.Square / 6);
            Assert.DoesNotContain(others, polygon => free.Meets(Shapes.Box(polygon)) && !own.Holds(Shapes.Box(polygon)));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_polygon_runs_counter_clockwise(string name)
    {
        IReadOnlyList<IReadOnlyList<CardPoint>> polygons = PrintedInk.Polygons(CardKinds.Find(name)!);
        Assert.True(polygons.Count > 0);
        Assert.All(polygons, polygon => Assert.True(Shapes.SignedArea(polygon) > 0));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_markers_cells_are_its_patterns(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        IReadOnlyList<IReadOnlyList<CardPoint>> polygons = PrintedInk.Polygons(kind);
        foreach (CardMarker marker in kind.Markers)
        {
            double cell = marker.Side / marker.Pattern.CellsWithBorder;
            for (int row = 0; row < marker.Pattern.CellsWithBorder; row++)
            {
                for (int column = 0; column < marker.Pattern.CellsWithBorder; column++)
                {
                    CardPoint middle = marker.Corners[0] + new CardVector((column + 0.5) * cell, -(row + 0.5) * cell);
                    Assert.Equal(!marker.Pattern.IsWhite(column, row), Shapes.IsInk(polygons, middle));
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_ruler_reaches_exactly_from_end_to_end(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        foreach (CardRuler ruler in kind.Rulers)
        {
            CardPoint[] points = [.. PrintedInk.Ruler(ruler).SelectMany(p => p)];
            bool across = ruler.From.V == ruler.To.V;
            double[] along = [.. points.Select(p => across ? p.U : p.V).Order()];
            Assert.Equal(across ? ruler.From.U : ruler.From.V, along[0], 1e-12);
            Assert.Equal(across ? ruler.To.U : ruler.To.V, along[^1], 1e-12);
        }
    }
}
