using System.Globalization;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

/// <summary>What is drawn larger than it is, is larger by the factor that the picture tells.</summary>
public sealed class ExaggerationTests
{
    private const string Blue = "#0072B2";

    [Fact]
    public void An_arrow_is_the_mark_s_offset_times_the_factor_on_the_bed_s_scale()
    {
        BedMap map = SomePictures.Bed;
        DrawnPicture drawn = DrawnPicture.Of(map);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"marks from their middle, {map.Exaggeration} times as long"), drawn.Words);
        // Two marks at one place count as one place.
        Assert.Equal(0, map.Middle.DistanceTo(new(0.1025, 0.14375)), 1e-12);
        IReadOnlyList<PixelPoint>[] arrows = [.. drawn.Outlines(Blue).Where(o => o.Count == 2)];
        Assert.Equal(map.Marks.Count, arrows.Length);
        foreach (SurveyedMark mark in map.Marks)
        {
            CardVector off = mark.Mark - map.Middle;
            double scale = 212.0 / 500 * map.Exaggeration;
            PixelPoint from = map.Place(mark.At);
            Assert.Contains(arrows, a => a[0].DistanceTo(from) < 0.01 && a[1].DistanceTo(from + new PixelVector(scale * off.U, -scale * off.V)) < 0.01);
        }
    }

    [Theory]
    [InlineData(0.004)]
    [InlineData(0.5)]
    [InlineData(30)]
    public void The_factor_is_round_and_the_longest_arrow_stays_in_the_margin(double u)
    {
        BedMap map = new("", new(SomePictures.Mm(900), SomePictures.Mm(600)), [new(1, new(Length.Zero, Length.Zero), new(u, 0)), new(2, new(SomePictures.Mm(900), Length.Zero), new(-u, 0))]);
        double length = map.PixelsPerMm * map.Exaggeration * u;
        Assert.True(length <= 46.001, $"{length} px");
        string first = map.Exaggeration.ToString("E3", CultureInfo.InvariantCulture);
        Assert.Contains(first[..5], (string[])["1.000", "2.000", "5.000"]);
    }

    [Fact]
    public void A_corner_of_the_frame_is_off_the_flat_by_its_height_times_the_factor()
    {
        TwistedFrame frame = SomePictures.Frame;
        StandingCorner low = frame.Corners.Single(c => c.Shim is not null);
        PixelPoint flat = frame.Place(low with { Height = Length.Zero });
        Assert.Equal(0.63 * frame.Exaggeration * frame.PixelsPerMm, frame.Place(low).Y - flat.Y, 1e-9);
        DrawnPicture drawn = DrawnPicture.Of(frame);
        Assert.Contains(drawn.Outlines(Blue).Single(o => o.Count > 3), p => p.DistanceTo(frame.Place(low)) < 0.01);
        Assert.All(
            [string.Create(CultureInfo.InvariantCulture, $"heights drawn {frame.Exaggeration} times as high"), "0.63 mm too low", "shim 0.60 mm", "far right"],
            w => Assert.Contains(w, drawn.Words));
    }

    [Fact]
    public void A_frame_that_is_flat_can_be_drawn() => Assert.NotEmpty(DrawnPicture.Of(SomePictures.Frame with
    {
        Corners = [.. SomePictures.Frame.Corners.Select(c => c with { Height = Length.Zero, Shim = null })],
    }).Words);
}
