namespace MarkReader.Application.Auditing;

/// <summary>An audit's figures over all photos. Errors are distances from the truth, mm; null when no mark was found.</summary>
/// <param name="Rms">Root mean square distance.</param>
/// <param name="Coverage">Part of the found marks whose 95 % region holds the truth, 0 to 1.</param>
/// <param name="StatedRms">Root mean square of the distance that the marks' covariances state.</param>
public sealed record AuditSummary(
    int Photos,
    int AsExpected,
    int BadFiles,
    int Truths,
    int Found,
    int Missed,
    int False,
    double? Rms,
    double? Median,
    double? Max,
    double? BiasU,
    double? BiasV,
    double? Coverage,
    double? StatedRms)
{
    public static AuditSummary Of(IReadOnlyList<AuditedPhoto> photos)
    {
        MatchedMark[] found = [.. photos.SelectMany(p => p.Found)];
        double[] errors = [.. found.Select(f => f.Error.Magnitude).Order()];
        double? Mean(Func<MatchedMark, double> value) => found.Length == 0 ? null : found.Average(value);
        double? Root(double? square) => square is { } s ? Math.Sqrt(s) : null;
        return new(
            photos.Count,
            photos.Count(p => p.AsExpected),
            photos.Count(p => !p.FilesAreSound),
            photos.Sum(p => p.Expected),
            found.Length,
            photos.Sum(p => p.Missed),
            photos.Sum(p => p.False),
            Root(Mean(f => Square(f.Error.Magnitude))),
            errors.Length == 0 ? null : (errors[(errors.Length - 1) / 2] + errors[errors.Length / 2]) / 2,
            errors.Length == 0 ? null : errors[^1],
            Mean(f => f.Error.U),
            Mean(f => f.Error.V),
            Mean(f => f.Covered ? 1 : 0),
            Root(Mean(f => f.Mark.Centre.Covariance.Uu + f.Mark.Centre.Covariance.Vv)));
    }

    private static double Square(double value) => value * value;
}
