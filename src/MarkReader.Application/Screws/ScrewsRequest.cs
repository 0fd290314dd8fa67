using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Application.Aiming;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Screws;

/// <summary>Which slope is to be taken away, and with which frame; not yet checked.</summary>
/// <param name="Slope">The slope, or the marks that show it.</param>
/// <param name="Frame">The source mirror's frame.</param>
/// <param name="Leg">Path lengths and the target's angle; null when not known, which the marks do not allow.</param>
/// <param name="Tolerance">On the spread over the travel, mm; used with path lengths only.</param>
public sealed record ScrewsRequest(SlopeInput Slope, FrameInput Frame, LegInput? Leg = null, double Tolerance = ScrewsRequest.DefaultTolerance)
{
    public const double DefaultTolerance = 0.5;
}

/// <summary>The slope to be taken away.</summary>
public abstract record SlopeInput
{
    private SlopeInput()
    {
    }

    internal abstract Failure? Check();

    /// <summary>Its components across the beam and the standard uncertainty of each, mrad.</summary>
    public sealed record Stated(double U, double V, double Uncertainty = Stated.DefaultUncertainty) : SlopeInput
    {
        /// <summary>That of two marks known to 0.05 mm each, 350 mm apart: √2·0.05/0.35.</summary>
        public const double DefaultUncertainty = 0.2;

        private const double Largest = 300;

        internal override Failure? Check()
        {
            string hint = InputTexts.Get("screwsRequest.giveSlopeAlongUAnd");
            return InputChecks.Between(U, (-Largest, Largest), ScrewInputFailures.SlopeInvalid, InputTexts.Get("screwsRequest.slopeAlongUInMrad"), hint)
                ?? InputChecks.Between(V, (-Largest, Largest), ScrewInputFailures.SlopeInvalid, InputTexts.Get("screwsRequest.slopeAlongVInMrad"), hint)
                ?? InputChecks.Between(Uncertainty, (0, Largest), ScrewInputFailures.SlopeUncertaintyInvalid, InputTexts.Get("screwsRequest.standardUncertaintySlopeInMrad"), InputTexts.Get("screwsRequest.giveThatEachComponentIn"));
        }
    }

    /// <summary>The near and the far mark on one target, mm in the card frame, and the standard uncertainty of each component.</summary>
    public sealed record FromMarks(CardPoint Near, CardPoint Far, double Uncertainty = FromMarks.DefaultUncertainty) : SlopeInput
    {
        /// <summary>That of a mark read with a ruler to about ±0.1 mm; 0.1/√3 ≈ 0.06 (JCGM 100:2008, 4.3.7).</summary>
        public const double DefaultUncertainty = 0.06;

        private const double Farthest = 300;

        internal override Failure? Check() => Mark(Near, "near") ?? Mark(Far, "far")
            ?? InputChecks.Between(Uncertainty, (1e-3, 10), ScrewInputFailures.MarkUncertaintyInvalid, InputTexts.Get("screwsRequest.standardUncertaintyMarksInMm"), InputTexts.Get("screwsRequest.giveThatEachComponentIn2"));

        private static Failure? Mark(CardPoint mark, string which) => InputChecks.Between(
            mark.DistanceTo(CardPoint.Origin), (0, Farthest), ScrewInputFailures.MarkInvalid, InputTexts.Say("screwsRequest.markDistanceFromCardCentre", which), InputTexts.Get("screwsRequest.giveUAndVMark"));
    }
}

/// <summary>A mirror's frame as people describe it: a square with contacts at its corners, named as seen facing the knobs.</summary>
/// <param name="Pivot">Corner of the pivot; null when all three contacts are screws.</param>
/// <param name="Screws">Two screws with a pivot, three without.</param>
/// <param name="Arm">Distance between neighbouring contacts, mm.</param>
/// <param name="Pitch">Advance of a screw in one turn, mm.</param>
/// <param name="IncidenceDegrees">Angle between the beam and the mirror's normal.</param>
/// <param name="Known">Responses learned at an earlier visit; null for none.</param>
public sealed record FrameInput(
    FrameCorner? Pivot,
    IReadOnlyList<ScrewCorner> Screws,
    double Arm,
    double Pitch,
    double IncidenceDegrees = FrameInput.DefaultIncidence,
    IReadOnlyList<KnownResponse>? Known = null)
{
    public const double DefaultIncidence = 45;

    internal Outcome<MirrorFrame> Checked()
    {
        if (!MirrorFrame.AtCorners(Pivot, Screws, Arm, Pitch).TryGet(out MirrorFrame? frame, out Failure? failure))
            return failure;
        // An angle must be finite before it can be one.
        return double.IsFinite(IncidenceDegrees)
            ? frame.WithIncidence(Angle.FromDegrees(IncidenceDegrees))
            : new Failure(FrameFailures.IncidenceInvalid, InputTexts.Get("screwsRequest.mirrorAngleIncidenceNotFinite"), InputTexts.Get("screwsRequest.giveForMirrorThatTurns"));
    }
}
