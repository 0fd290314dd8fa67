using MarkReader.Alignment.Aiming;
using MarkReader.Application.Aiming;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>An aim point for people.</summary>
internal static class AimText
{
    private const double TwoSidedNormal95 = 1.959964; // JCGM 100:2008, Table G.2, infinite degrees of freedom

    public static string Of(AimFinding finding)
    {
        AimSolution solution = finding.Solution;
        Slope slope = solution.Slope;
        Table table = new("", "u/mm", "v/mm", "region/mm");
        Add(table, "near mark", finding.Near.Centre);
        Add(table, "far mark", finding.Far.Centre);
        Add(table, "aim point", solution.Aim);
        PixelPoint aim = finding.AimInPhoto;
        string[] lines =
        [
            table.ToString(),
            Words.Region,
            $"slope: u {Signed(slope.U)} mrad, v {Signed(slope.V)} mrad (within {Words.Fixed(TwoSidedNormal95 * Math.Sqrt(slope.Covariance.Uu), 2)} and {Words.Fixed(TwoSidedNormal95 * Math.Sqrt(slope.Covariance.Vv), 2)} with 95 % probability each)",
            $"the aim point lies {Words.Fixed(solution.Aim.Point.DistanceTo(finding.Near.Centre.Point), 2)} mm from the near mark, {Words.Fixed(solution.Ratio, 3)} of the distance near to far, on the side away from the far mark; px {Words.Fixed(aim.X, 0)}, {Words.Fixed(aim.Y, 0)} in the photo",
            BudgetText.Of(("near", finding.Near.Budget), ("far", finding.Far.Budget), ("aim", solution.Budget)),
            Words.Budget,
            .. Quality(finding),
            "Turn the source mirror's screws until the far mark falls on the aim point; then every mark of the leg does.",
            .. Words.Of(finding.Warnings),
            Words.Cautions,
        ];
        return string.Join(Environment.NewLine, lines);
    }

    private static IEnumerable<string> Quality(AimFinding finding) => finding.NearView is { } near
        ? [QualityText.Of("near photo", near.Quality), QualityText.Of("far photo", finding.FarView.Quality)]
        : [QualityText.Of("photo", finding.FarView.Quality)];

    private static void Add(Table table, string name, MeasuredPoint point) =>
        table.Add(name, Words.Place(point.Point.U), Words.Place(point.Point.V), Words.Region95(point.Covariance));

    private static string Signed(double value) => value.ToString("+0.00;-0.00;0.00", System.Globalization.CultureInfo.InvariantCulture);
}
