using MarkReader.Alignment.Advice;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>What the owner of a practice machine tells of it at the beginning of a visit.</summary>
public static class PracticeSetup
{
    /// <summary>Standard uncertainty of a path length measured with a rule along the beam.</summary>
    private static readonly Length s_path = Length.FromMillimetres(2);

    /// <param name="machine">The machine as its owner describes it.</param>
    /// <param name="tolerance">On the spread over the bed and on the marks of each leg.</param>
    /// <param name="centring">Largest distance of the steady mark from the entry hole's centre; null when it is not to be centred.</param>
    /// <param name="known">Responses by leg from an earlier visit.</param>
    /// <param name="stock">Washers and sheets; empty for any height.</param>
    public static VisitSetup Of(
        StatedMachine machine,
        Length tolerance,
        Length? centring = null,
        IReadOnlyDictionary<string, IReadOnlyList<KnownResponse>>? known = null,
        IReadOnlyList<StockItem>? stock = null)
    {
        VisitLeg Named(string name, StatedLeg leg) => new(name, Leg(leg, tolerance, known?.GetValueOrDefault(name) ?? []));
        return new([Named(VisitLeg.One, machine.LegOne), Named(VisitLeg.Two, machine.LegTwo)])
        {
            Bed = new(new Bed(machine.LegTwo.Travel, machine.LegOne.Travel), tolerance),
            Aperture = centring is { } most ? new(new MeasuredPoint(CardPoint.Origin, Covariance2.Isotropic(0.05)), most) : null,
            Stock = stock ?? [],
        };
    }

    private static LegSetup Leg(StatedLeg leg, Length tolerance, IReadOnlyList<KnownResponse> known) => new(
        new Leg(leg.Incidence, Length.Zero, Length.Zero), new Station(leg.NearPath, s_path), new Station(leg.FarPath, s_path), tolerance, Frame(leg.Frame))
    {
        Known = known,
    };

    // The corners have the same names on both sides.
    private static MirrorFrame Frame(StatedFrame frame) => MirrorFrame.AtCorners(
        frame.Pivot is { } pivot ? Corner(pivot) : null,
        [.. frame.Screws.Select(s => new ScrewCorner(s.Name, Corner(s.At)))],
        frame.Arm.Millimetres,
        frame.Pitch.Millimetres).ValueOrThrow();

    private static FrameCorner Corner(Practice.Frames.FrameCorner corner) => Enum.Parse<FrameCorner>(corner.ToString());
}
