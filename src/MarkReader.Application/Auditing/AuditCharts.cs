using System.Globalization;
using MarkReader.Drawing.Audits;
using MarkReader.Metrology.Coverage;

namespace MarkReader.Application.Auditing;

/// <summary>An audit as a picture.</summary>
public static class AuditCharts
{
    /// <summary>At how many ranks the range of sorted distances is worked out.</summary>
    private const int BandRanks = 60;

    /// <summary>A picture of more rows than these would be too high.</summary>
    private const int MostKinds = 100;

    public static AuditChart Of(Audit audit)
    {
        KindRow[] kinds = [.. audit.Kinds.Take(MostKinds).Select(k => Row(k.Kind, k, audit.Photos.Where(p => p.Kind == k.Kind)))];
        AuditSummary s = audit.Summary;
        return new(
            AuditTexts.Say("auditCharts.title", s.Photos, audit.Kinds.Count, s.Truths)
                + (kinds.Length < audit.Kinds.Count ? AuditTexts.Say("auditCharts.firstKindsDrawn", MostKinds) : ""),
            kinds,
            Row(AuditTexts.Get("auditCharts.all"), s, audit.Photos),
            Distances([.. audit.Photos.SelectMany(p => p.Found).Select(f => f.MahalanobisSquared).Order()]),
            [.. Figures(s)]);
    }

    private static KindRow Row(string name, AuditSummary s, IEnumerable<AuditedPhoto> photos) => new(
        name,
        AuditTexts.Say("auditCharts.foundOf", s.Found, s.Truths) + (s.False > 0 ? $" + {s.False}" : ""),
        [.. photos.SelectMany(p => p.Found).Select(f => f.Error.Magnitude)],
        s.Rms,
        s.StatedRms,
        s is { Coverage: { } part, CoverageLow: { } low, CoverageHigh: { } high } ? new(part, low, high) : null);

    private static DistanceCurve Distances(double[] sorted)
    {
        int n = sorted.Length;
        int[] ranks = [.. Enumerable.Range(0, BandRanks).Select(i => Rank(i, n)).Distinct()];
        return new(
            [.. sorted.Select((observed, i) => (DistanceQuantiles.Median(i + 1, n), observed))],
            n == 0 ? [] : [.. ranks.Select(k => (DistanceQuantiles.Median(k, n), DistanceQuantiles.Range(k, n).Low, DistanceQuantiles.Range(k, n).High))]);
    }

    /// <summary>Ranks from 1 to n, closer together towards the last, where the distances lie far apart.</summary>
    private static int Rank(int i, int n)
    {
        double t = 1 - (i / (BandRanks - 1.0));
        return n - (int)Math.Round((n - 1) * t * t * t);
    }

    private static IEnumerable<FigureLine> Figures(AuditSummary s)
    {
        static string Percent(double? part) => part is { } p ? (100 * p).ToString("0.0", CultureInfo.InvariantCulture) + " %" : "-";
        static string Micrometres(double? mm) => mm is { } v ? (1000 * v).ToString("0.0", CultureInfo.InvariantCulture) + " µm" : "-";
        static string Ratio(double? value) => value is { } v ? v.ToString("0.00", CultureInfo.InvariantCulture) : "-";
        yield return new(AuditTexts.Get("auditCharts.found"), $"{AuditTexts.Say("auditCharts.foundOf", s.Found, s.Truths)}, {Percent(s.FoundRate)}");
        yield return new(AuditTexts.Get("auditCharts.false"), $"{s.False}, {Percent(s.FalseRate)}");
        yield return new(AuditTexts.Get("auditCharts.errorRmsStatedRms"), $"{Micrometres(s.Rms)} ({Micrometres(s.StatedRms)})");
        yield return new(AuditTexts.Get("auditCharts.errorMedianLargest"), $"{Micrometres(s.Median)}, {Micrometres(s.Max)}");
        yield return new(AuditTexts.Get("auditCharts.insideRegion"), AuditTexts.Say("auditCharts.interval", Percent(s.Coverage), Percent(s.CoverageLow), Percent(s.CoverageHigh)));
        yield return new(AuditTexts.Get("auditCharts.mahalanobisDistanceMedianLargest"), $"{Ratio(s.MedianMahalanobis)}, {Ratio(s.MaxMahalanobis)}");
        yield return new(AuditTexts.Get("auditCharts.beyondThreeTimesRegion"), $"{s.BeyondThrice}");
    }
}
