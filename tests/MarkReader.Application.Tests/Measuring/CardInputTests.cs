using MarkReader.Application.Measuring;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Measuring;

/// <summary>What a user measured of the print and the tape.</summary>
public sealed class CardInputTests
{
    [Fact]
    public void Readings_reach_the_measurement_with_their_usual_uncertainties()
    {
        MeasureOptions options = new CardInput(RulerU: 40.3, RulerV: 39.8, TapeHeight: -1.2).ApplyTo(new("folder")).ValueOrThrow();
        Assert.Equal("folder", options.DebugDirectory);
        Assert.Equal(new RulerReadings(Mm(40.3), Mm(39.8), Mm(0.1)), options.Rulers);
        Assert.Equal(-1.2, options.Tape.Height.Millimetres, 1e-12);
        Assert.Equal(0.3, options.Tape.StandardUncertainty.Millimetres, 1e-12);
    }

    [Fact]
    public void Nothing_measured_leaves_the_print_exact_and_the_tape_on_the_card()
    {
        MeasureOptions options = CardInput.Nothing.ApplyTo(new()).ValueOrThrow();
        Assert.Null(options.Rulers);
        Assert.Equal(TapeHeight.OnCard, options.Tape);
    }

    [Fact]
    public void Zero_is_an_uncertainty_and_a_tape_on_the_card_has_at_least_that_of_a_layer()
    {
        MeasureOptions exact = new CardInput(40, 40, 0, 0.5, 0).ApplyTo(new()).ValueOrThrow();
        Assert.Equal((0.0, 0.0), (exact.Rulers!.StandardUncertainty.Millimetres, exact.Tape.StandardUncertainty.Millimetres));
        Assert.Equal(0.05, new CardInput(TapeHeight: 0).ApplyTo(new()).ValueOrThrow().Tape.StandardUncertainty.Millimetres, 1e-12);
    }

    [Theory]
    [InlineData("RULER_MISSING", 40.0, null, null, null, null)]
    [InlineData("RULER_MISSING", null, 40.0, null, null, null)]
    [InlineData("RULER_MISSING", null, null, 0.1, null, null)]
    [InlineData("RULER_INVALID", double.NaN, 40.0, null, null, null)]
    [InlineData("RULER_INVALID", 40.0, -40.0, null, null, null)]
    [InlineData("RULER_INVALID", 40.0, double.PositiveInfinity, null, null, null)]
    [InlineData("RULER_INVALID", 0.0, 40.0, null, null, null)]
    [InlineData("RULER_INVALID", 1e300, 40.0, null, null, null)]
    [InlineData("RULER_UNCERTAINTY_INVALID", 40.0, 40.0, -0.1, null, null)]
    [InlineData("RULER_UNCERTAINTY_INVALID", 40.0, 40.0, double.NaN, null, null)]
    [InlineData("RULER_UNCERTAINTY_INVALID", 40.0, 40.0, 5.0, null, null)]
    [InlineData("TAPE_HEIGHT_INVALID", null, null, null, double.NaN, null)]
    [InlineData("TAPE_HEIGHT_INVALID", null, null, null, 21.0, null)]
    [InlineData("TAPE_HEIGHT_INVALID", null, null, null, double.NegativeInfinity, null)]
    [InlineData("TAPE_HEIGHT_MISSING", null, null, null, null, 0.1)]
    [InlineData("TAPE_HEIGHT_UNCERTAINTY_INVALID", null, null, null, 1.0, -0.1)]
    [InlineData("TAPE_HEIGHT_UNCERTAINTY_INVALID", null, null, null, 1.0, double.NaN)]
    public void Readings_that_make_no_sense_are_refused(string code, double? u, double? v, double? uncertainty, double? height, double? heightUncertainty)
    {
        Assert.False(new CardInput(u, v, uncertainty, height, heightUncertainty).ApplyTo(new()).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.Equal(FailureKind.BadInput, failure.Code.Kind);
    }

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
