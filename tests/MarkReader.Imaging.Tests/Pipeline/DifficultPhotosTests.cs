using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Sampling;

namespace MarkReader.Imaging.Tests.Pipeline;

/// <summary>One photo of each difficulty through the whole pipeline; the audit has the statistics.</summary>
public sealed class DifficultPhotosTests
{
    [Theory]
    [InlineData("stain")]
    [InlineData("shadow")]
    [InlineData("glare")]
    [InlineData("ring")]
    [InlineData("hole")]
    [InlineData("brightHole")]
    [InlineData("tapeOver")]
    [InlineData("curved")]
    [InlineData("wideLens")]
    [InlineData("secondCard")]
    [InlineData("dirty")]
    public void Marks_are_found_and_placed_to_a_fiftieth_of_a_millimetre(string kind)
    {
        SceneSpec spec = SceneSampler.Draw(kind, 5).Shrunk(0.5);
        Assert.InRange(Truth.Errors(spec.Marks(), Measure(spec).Marks).Max(), 0, 0.02);
    }

    [Theory]
    [InlineData("overlap")]
    [InlineData("faint")]
    [InlineData("blur")]
    public void Marks_that_tell_less_are_found_and_placed_to_a_tenth(string kind)
    {
        SceneSpec spec = SceneSampler.Draw(kind, 7).Shrunk(0.5);
        Assert.InRange(Truth.Errors(spec.Marks(), Measure(spec).Marks).Max(), 0, 0.1);
    }

    [Fact]
    public void A_tape_above_the_card_is_measured_in_its_own_plane_when_its_height_is_given()
    {
        SceneSpec spec = Support.Scenes.Small(31);
        spec = spec with { TapeHeight = 0.5, Pose = spec.Pose with { TiltDegrees = 30 } };
        double unaware = Truth.Errors(spec.Marks(), Measure(spec).Marks).Max();
        PhotoMeasurement aware = Measure(spec, new() { Tape = new(Length.FromMillimetres(0.5), Length.FromMillimetres(0.05)) });
        Assert.InRange(unaware, 0.2, 0.4);
        Assert.InRange(Truth.Errors(spec.Marks(), aware.Marks).Max(), 0, 0.03);
        Assert.Contains(aware.Marks[0].Budget, c => c.Source == UncertaintySource.Parallax && c.Covariance.Uu + c.Covariance.Vv > 1e-5);
    }

    [Fact]
    public void A_print_that_is_out_of_scale_is_put_right_by_its_rulers()
    {
        SceneSpec spec = Support.Scenes.Small(32);
        spec = spec with { Card = spec.Card! with { PrintScaleU = 0.97, PrintScaleV = 1.02 } };
        RulerReadings readings = new(Length.FromMillimetres(0.97 * 40), Length.FromMillimetres(1.02 * 40), Length.FromMillimetres(0.1));
        PhotoMeasurement measured = Measure(spec, new() { Rulers = readings });
        Assert.InRange(Truth.Errors(spec.Marks(), measured.Marks).Max(), 0, 0.02);
        // A reading uncertain by 0.1 mm in 40 leaves 1/400 of the distance from the centre.
        UncertaintyComponent scale = measured.Marks[0].Budget.Single(c => c.Source == UncertaintySource.PrintScale);
        Assert.Equal(Math.Abs(measured.Marks[0].Centre.Point.U) / 400, Math.Sqrt(scale.Covariance.Uu), 0.0005);
    }

    [Fact]
    public void Readings_that_cannot_be_this_cards_rulers_are_refused()
    {
        RulerReadings readings = new(Length.FromMillimetres(120), Length.FromMillimetres(40), Length.FromMillimetres(0.1));
        Assert.False(PhotoMeasurer.Measure(Support.Scenes.Small(33).Photo(), new() { Rulers = readings }).TryGet(out _, out Failure? failure));
        Assert.Equal("RULER_READING", failure!.Code.Name);
    }

    [Fact]
    public void Only_the_marks_that_the_user_taps_are_measured()
    {
        SceneSpec spec = Support.Scenes.Small(34);
        PhotoMeasurement all = Measure(spec);
        Assert.Equal(2, all.Marks.Count);
        PixelPoint beside = all.Marks[1].Photo + new PixelVector(8, -6);
        PhotoMeasurement tapped = Measure(spec, new() { Taps = [beside] });
        Assert.Single(tapped.Marks);
        Assert.InRange(tapped.Marks[0].Centre.Point.DistanceTo(all.Marks[1].Centre.Point), 0, 0.005);
    }

    [Fact]
    public void Overlapping_marks_that_are_tapped_are_those_that_are_found_anyway()
    {
        SceneSpec spec = SceneSampler.Draw("overlap", 7).Shrunk(0.5);
        PhotoMeasurement all = Measure(spec);
        Assert.Equal(2, all.Marks.Count);
        PhotoMeasurement both = Measure(spec, new() { Taps = [.. all.Marks.Select(m => m.Photo)] });
        Assert.Equal(all.Marks.Select(m => m.Centre.Point), both.Marks.Select(m => m.Centre.Point));
        PhotoMeasurement one = Measure(spec, new() { Taps = [all.Marks[1].Photo] });
        Assert.Equal(all.Marks[1].Centre.Point, Assert.Single(one.Marks).Centre.Point);
        Assert.DoesNotContain(one.Warnings, w => w.Code == "unlikelyMark");
    }

    [Fact]
    public void A_letter_that_the_user_taps_is_said_to_be_an_unlikely_mark()
    {
        SceneSpec spec = Support.Scenes.Small(36);
        spec = spec with { Pens = [new(PenColour.Black, 0.8, [(4.4, -7.6), (6, -4.4), (7.6, -7.6)]), new(PenColour.Black, 0.8, [(5.2, -6.2), (6.8, -6.2)])] };
        PhotoMeasurement seen = Measure(spec);
        Assert.DoesNotContain(seen.Marks, m => m.Centre.Point.DistanceTo(new(6, -6)) < 3);
        PhotoMeasurement tapped = Measure(spec, new() { Taps = [seen.Projection.ToPhoto(new(6, -6))] });
        Assert.Contains(tapped.Warnings, w => w.Code == "unlikelyMark");
        Assert.DoesNotContain(Measure(spec, new() { Taps = [seen.Marks[0].Photo] }).Warnings, w => w.Code == "unlikelyMark");
    }

    [Fact]
    public void The_components_of_a_marks_budget_add_up_to_its_covariance()
    {
        foreach (Imaging.Marks.Mark mark in Measure(Support.Scenes.Small(35)).Marks)
        {
            Covariance2 sum = mark.Budget.Select(c => c.Covariance).Aggregate((a, b) => a + b);
            Assert.Equal(mark.Centre.Covariance.Uu, sum.Uu, 1e-12);
            Assert.Equal(mark.Centre.Covariance.Vv, sum.Vv, 1e-12);
        }
    }

    private static PhotoMeasurement Measure(SceneSpec spec, MeasureOptions? options = null) => PhotoMeasurer.Measure(spec.Photo(), options).ValueOrThrow();
}
