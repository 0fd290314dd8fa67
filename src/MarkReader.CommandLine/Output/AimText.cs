using MarkReader.Alignment.Aiming;
using MarkReader.Application.Aiming;
using MarkReader.Application.Budgets;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>An aim point for people.</summary>
internal static class AimText
{
    public static string Of(AimFinding finding)
    {
        AimSolution solution = finding.Solution;
        Slope slope = solution.Slope;
        Table table = new("", "u/mm", "v/mm", Get("aim.regionMm"));
        Add(table, Get("aim.nearMark"), finding.Near.Centre);
        Add(table, Get("aim.farMark"), finding.Far.Centre);
        Add(table, Get("aim.aimPoint"), solution.Aim);
        PixelPoint aim = finding.AimInPhoto;
        string[] lines =
        [
            table.ToString(),
            Words.Region,
            Say("aim.slopeUMradV", Signed(slope.U), Signed(slope.V), Words.Fixed(Normal95.Factor * Math.Sqrt(slope.Covariance.Uu), 2), Words.Fixed(Normal95.Factor * Math.Sqrt(slope.Covariance.Vv), 2)),
            Say("aim.theAimPointLies", Words.Fixed(solution.Aim.Point.DistanceTo(finding.Near.Centre.Point), 2), Words.Fixed(solution.Ratio, 3), Words.Fixed(aim.X, 0), Words.Fixed(aim.Y, 0)),
            BudgetText.Of((Get("aim.near"), finding.Near.Budget), (Get("aim.far"), finding.Far.Budget), (Get("aim.aim"), solution.Budget)),
            .. Explained(finding),
            Words.Budget,
            .. Quality(finding),
            .. finding.NearView is { } near ? Words.Camera(near, finding.FarView) : Words.Camera(finding.FarView),
            Get("aim.turnTheSourceMirror"),
            .. Words.Of(finding.Warnings),
            Words.Cautions,
        ];
        return string.Join(Environment.NewLine, lines);
    }

    private static IEnumerable<string> Explained(AimFinding finding) =>
        ExplainedBudget.Of(AimReport.From(finding), RecordFormat.Plain) is { } words ? [words.Enough, words.Dominant, words.Halving] : [];

    private static IEnumerable<string> Quality(AimFinding finding) => finding.NearView is { } near
        ? [QualityText.Of(Get("aim.nearPhoto"), near.Quality), QualityText.Of(Get("aim.farPhoto"), finding.FarView.Quality)]
        : [QualityText.Of(Get("aim.photo"), finding.FarView.Quality)];

    private static void Add(Table table, string name, MeasuredPoint point) =>
        table.Add(name, Words.Place(point.Point.U), Words.Place(point.Point.V), Words.Region95(point.Covariance));

    private static string Signed(double value) => value.ToString("+0.00;-0.00;0.00", System.Globalization.CultureInfo.InvariantCulture);
}
