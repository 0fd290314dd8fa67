using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Survey;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Texts;

/// <summary>Every sentence for an action, a diagnosis and a cure.</summary>
internal static class EveryAction
{
    private static readonly Bed s_bed = new(Mm(500), Mm(400));

    public static IEnumerable<string> All() => [.. Actions().Select(ActionWords.Of), .. Diagnoses().SelectMany(d => new[] { SurveyWords.Diagnosis(d), SurveyWords.Cure(d) })];

    private static IEnumerable<VisitAction> Actions() =>
    [
        new VisitAction.Fire("2", 1234.56, Mm(12.34)),
        new VisitAction.Fire("1", 80, null),
        new VisitAction.Turn("1", "A", -0.1875),
        new VisitAction.Survey(Mm(1234.56), Mm(0)),
        new VisitAction.Shim(BedCorner.FarLeft, Mm(-0.356)),
        new VisitAction.Shim(BedCorner.NearRight, Mm(0.5)),
        new VisitAction.MoveTarget(new(-0.5, 0)),
        new VisitAction.MoveTarget(new(0.5, 0)),
        new VisitAction.MoveTarget(new(0, 1.25)),
        new VisitAction.MoveTarget(new(-1, 2)),
        new VisitAction.RaiseTube(Mm(1.005)),
        new VisitAction.Realign("2", GantryEnd.Far),
        new VisitAction.Realign("2", GantryEnd.Near),
        new VisitAction.Realign("1", GantryEnd.Near),
        new VisitAction.Done(),
        new VisitAction.Stop(),
    ];

    private static IEnumerable<SurveyDiagnosis> Diagnoses()
    {
        SlopeFinding one = new(1, new(0.004, -1.5), Covariance2.Isotropic(0.1), new(0, -3.5), 0.01), two = one with { Leg = 2, Walk = new(1234.5, 0.5), Slope = new(0, 1) };
        TwistFinding maybe = Twist(0.904, 0.1, 0.1, 0.2, 0.6), surely = Twist(-0.904, 0.001, 0.001, 0.001, 0.997);
        SurveyDiagnosis nothing = CornerSurvey.Diagnose(s_bed, [.. BedCorners.All.Select(At)]).ValueOrThrow();
        return
        [
            CornerSurvey.Diagnose(s_bed, []).ValueOrThrow(),
            nothing,
            nothing with { Findings = [maybe, one], Cure = new ShimCorner(BedCorner.FarRight, MeasuredLength.FromMillimetres(0.876, 0.123)) },
            nothing with { Findings = [surely], Cure = new RealignLeg(2, GantryEnd.Far) },
            nothing with { Findings = [surely], Cure = new RealignLeg(2, GantryEnd.Near) },
            nothing with { Findings = [one, two], Cure = new RealignLeg(1, GantryEnd.Near) },
            nothing with { Findings = [two, maybe], Cure = new RealignLeg(2, GantryEnd.Near) },
            nothing with { Findings = [surely], Cure = new CheckFrame() },
        ];
    }

    private static TwistFinding Twist(double height, double nearLeft, double nearRight, double farLeft, double farRight) => new(
        BedCorner.FarRight,
        new(height, 0.1),
        new Dictionary<BedCorner, double> { [BedCorner.NearLeft] = nearLeft, [BedCorner.NearRight] = nearRight, [BedCorner.FarLeft] = farLeft, [BedCorner.FarRight] = farRight },
        0.01);

    private static SurveyMark At(BedCorner corner)
    {
        (Length x, Length y) = s_bed.Place(corner);
        return new(x, y, new(new(0, 0), Covariance2.Isotropic(0.1)));
    }

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
