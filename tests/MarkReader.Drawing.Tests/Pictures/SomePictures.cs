using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

/// <summary>One picture of each kind, with everything in it that it can have.</summary>
internal static class SomePictures
{
    public static MeasuredPoint Aim { get; } = new(new(-1.1, -0.2), new(0.04, 0.02, 0.03));

    public static MeasuredPoint Expected { get; } = new(new(-1.5, 0.4), Covariance2.Isotropic(0.2));

    public static TargetPlan Target { get; } = new("Target of leg 1", [Mark(1, MarkRole.Near, 0.4, 0.2, false), Mark(2, MarkRole.Far, 2.4, 1.4, false), Mark(3, MarkRole.Far, 1.1, 0.7, true)])
    {
        Aim = Aim,
        Tolerance = new(0.7, 0.5, Angle.Zero),
        Expected = [Expected],
        Moving = new(1.1, 0.7),
        ToGo = Mm(2.38),
        AtFirst = Mm(3.85),
    };

    public static ScrewDial Dial { get; } = new("Leg 1: turn screw A", [new(null, -15, -15), new("A", 15, -15), new("B", -15, 15)], "A", 0.125, "1/8 turn clockwise");

    public static BedMap Bed { get; } = new(
        "Marks over the bed",
        new(Mm(500), Mm(400)),
        [Survey(1, 0, 0, 0.1, 0), Survey(2, 500, 400, 0.2, 0.55), Survey(3, 500, 0, 0.1, 0.05), Survey(4, 0, 400, 0, 0), Survey(5, 500, 400, 0.22, 0.5)])
    {
        Tolerance = Mm(0.5),
        StandsOut = new(Mm(500), Mm(400)),
        Next = new(Mm(500), Mm(0)),
    };

    public static TwistedFrame Frame { get; } = new(
        "The gantry's frame",
        new(Mm(500), Mm(400)),
        [new("near left", false, false, Length.Zero), new("near right", true, false, Length.Zero), new("far left", false, true, Length.Zero), new("far right", true, true, Mm(-0.63), Mm(0.6))]);

    public static ApertureView Aperture { get; } = new("The beam in the head's entry hole", Mm(18), Mm(7), new(new(4, 0), Covariance2.Isotropic(0.1)))
    {
        Tolerance = Mm(0.5),
        Clipped = 0.0033301,
    };

    public static UncertaintyBars Bars { get; } = new("Aim point of leg 1: uncertainty", [new("Marks", Mm(0.06), 0.9), new("Path lengths", Mm(0.02), 0.1)], Mm(0.0632));

    public static HistoryChart History { get; } = new(
        "Leg 2: slope, mrad",
        [
            new("u", [Visit(0, 2.4, 0.1), Visit(31, 0.3, 0.2), Visit(64, 0.5, null), Visit(90, 0.9, 0.05)]),
            new("v", [Visit(0, -1.1, 0.15), Visit(31, 0.2, -0.2), Visit(64, 0.1, null), Visit(90, -0.1, 0.1)]),
        ],
        0.8,
        IsLength: false);

    public static CardErrorMap CardErrors { get; } = new("Errors of marks on the card", Mm(26), Mm(0.05), [.. from j in Enumerable.Range(-3, 7) from i in Enumerable.Range(-3, 7)
        select new PlaceError(new(26 * i / 6.0, 26 * j / 6.0), new((0.01 * i) + (0.002 * j * j), (-0.012 * j) + (0.003 * i)))]);

    public static IReadOnlyList<IPicture> All { get; } = [Target, Dial, Bed, Frame, Aperture, Bars, History, CardErrors];

    /// <summary>Pictures with as many or as long words as they may have.</summary>
    public static IReadOnlyList<IPicture> Crowded { get; } =
    [
        Aperture with { Offset = new(new(0.02, -0.03), Covariance2.Isotropic(0.03)) },
        Aperture with { Offset = new(new(0.3, -0.3), Covariance2.Isotropic(0.05)), Tolerance = Mm(2) },
        Dial with { Turns = -1.0 / 128, Saying = "a touch counter-clockwise, less than 1/32 turn (3°)" },
        Bed with { StandsOut = new(Mm(0), Mm(400)), Marks = [Survey(1, 0, 0, 0.1, 0), Survey(2, 500, 400, 0.2, 0), Survey(3, 500, 0, 0.1, 0), Survey(4, 0, 400, 0, 0.9), Survey(5, 0, 400, 0.2, 1)] },
        Frame with { Corners = [new("near left", false, false, Length.Zero), new("near right", true, false, Mm(0.9), Mm(0.8)), new("far left", false, true, Length.Zero), new("far right", true, true, Length.Zero)] },
        Target with { Marks = [Mark(1, MarkRole.Near, 0, 0, true), Mark(2, MarkRole.Far, 0.1, 0.05, true)], Moving = new(0.1, 0.05), Aim = new(new(-0.02, 0), Covariance2.Isotropic(0.1)), Expected = [] },
        Bars with { Bars = [new("turns of the screws after these marks", Mm(0.06), 0.9), new("path lengths", Mm(0.02), 0.1)] },
    ];

    public static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    private static HistoryMoment Visit(int day, double found, double? left) =>
        new(new DateTimeOffset(2026, 3, 4, 9, 0, 0, TimeSpan.Zero).AddDays(day), new(found, 0.2), left is { } l ? new(l, 0.15) : null);

    public static PlannedMark Mark(int number, MarkRole role, double u, double v, bool counts) => new(number, role, new(new(u, v), Covariance2.Isotropic(0.05)), counts);

    private static SurveyedMark Survey(int number, double x, double y, double u, double v) => new(number, new(Mm(x), Mm(y)), new(u, v));
}
