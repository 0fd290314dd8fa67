using System.Text.Json;
using MarkReader.Application.Apertures;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Apertures;

public sealed class FindTransmissionTests
{
    /// <summary>Centred, all exact: 1 − exp(−2a²/w²), with a = w it is 86.47 %.</summary>
    [Fact]
    public void An_opening_as_wide_as_the_beam_passes_86_47_percent_and_centring_it_gains_nothing()
    {
        OpeningFinding opening = FindTransmission.Run(new(new(5, 0, 0, 0), new BeamInput.Stated(5, 0))).ValueOrThrow().Opening!;
        Assert.Equal(1 - Math.Exp(-2), opening.Now.Mean, 1e-9);
        Assert.Equal(0, opening.Now.Uncertainty, 1e-9);
        Assert.Equal(0, opening.Gain, 1e-12);
    }

    [Fact]
    public void Centring_gains_what_the_offset_clips_and_intervals_hold_the_estimates()
    {
        OpeningFinding opening = FindTransmission.Run(new(new(8, 2, -1.5), new BeamInput.Stated(5))).ValueOrThrow().Opening!;
        Assert.True(opening.Gain > 0.05, $"{opening.Gain}");
        Assert.Equal(opening.Centred.Mean - opening.Now.Mean, opening.Gain, 1e-12);
        Assert.InRange(opening.Now.Mean, opening.Now.Low, opening.Now.High);
        Assert.InRange(opening.Now.AtEstimate, opening.Now.Low, opening.Now.High);
        Assert.InRange(opening.Now.AtLeast, opening.Now.Low, opening.Now.Mean);
    }

    /// <summary>J. M. Liu, Opt. Lett. 7 (1982) 196: diameters of w = 2.5 mm above a threshold of 1.</summary>
    [Fact]
    public void A_beam_from_marks_is_that_of_the_law_and_is_used_for_the_opening()
    {
        EnergyMarks marks = new([.. new[] { 2.0, 4, 8 }.Select(e => EnergyMarksText.Read(FormattableString.Invariant($"{e}:{2.5 * Math.Sqrt(2 * Math.Log(e)):R}:0.001")).ValueOrThrow().Marks[0])]);
        ApertureFinding alone = FindTransmission.Run(new(null, new BeamInput.FromMarks(marks))).ValueOrThrow();
        Assert.Null(alone.Opening);
        Assert.Equal(2.5, alone.BeamRadius.Value.Millimetres, 1e-4);
        Assert.Equal(1, alone.Size!.Threshold, 1e-3);
        OpeningFinding opening = FindTransmission.Run(new(new(5, 0, 0, 0), new BeamInput.FromMarks(marks))).ValueOrThrow().Opening!;
        Assert.Equal(1 - Math.Exp(-2), opening.Now.Mean, 1e-3);
    }

    [Theory]
    [InlineData(0, 5, 0.5, 0, 0.1, "APERTURE_RADIUS")]
    [InlineData(double.NaN, 5, 0.5, 0, 0.1, "APERTURE_RADIUS")]
    [InlineData(18, 0, 0.5, 0, 0.1, "BEAM_RADIUS")]
    [InlineData(18, 5, 3, 0, 0.1, "BEAM_RADIUS_UNCERTAIN")]
    [InlineData(18, 5, double.PositiveInfinity, 0, 0.1, "BEAM_RADIUS_UNCERTAIN")]
    [InlineData(18, 5, 0.5, 1e300, 0.1, "APERTURE_OFFSET")]
    [InlineData(18, 5, 0.5, 0, -0.1, "APERTURE_OFFSET")]
    public void Numbers_that_make_no_sense_are_refused(double diameter, double beam, double beamUncertainty, double offset, double uncertainty, string code)
    {
        Assert.False(FindTransmission.Run(new(new(diameter, offset, 0, uncertainty), new BeamInput.Stated(beam, beamUncertainty))).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Fact]
    public void Json_has_beam_opening_and_gain()
    {
        using JsonDocument document = JsonDocument.Parse(ReportJson.Write(ApertureReport.From(FindTransmission.Run(new(new(18, 1, 0.5), new BeamInput.Stated(5))).ValueOrThrow())));
        JsonElement root = document.RootElement;
        Assert.Equal(["beam", "aperture", "warnings"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal((5, 0.5), (root.GetProperty("beam").GetProperty("diameter").GetDouble(), root.GetProperty("beam").GetProperty("uncertainty").GetDouble()));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("beam").GetProperty("marks").ValueKind);
        Assert.Equal(
            ["diameter", "offsetU", "offsetV", "offsetUncertainty", "power", "centred", "gain"], root.GetProperty("aperture").EnumerateObject().Select(p => p.Name));
        Assert.Equal(["mean", "uncertainty", "atEstimate", "interval", "atLeast"], root.GetProperty("aperture").GetProperty("power").EnumerateObject().Select(p => p.Name));
    }
}
