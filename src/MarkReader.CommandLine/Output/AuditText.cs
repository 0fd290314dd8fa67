using MarkReader.Application.Auditing;

namespace MarkReader.CommandLine.Output;

/// <summary>An audit for people.</summary>
internal static class AuditText
{
    /// <summary>More photos than this are not listed unless that is asked for.</summary>
    public const int MostListed = 40;

    public static string Of(Audit audit, bool listPhotos = false)
    {
        string[] photos = listPhotos || audit.Photos.Count <= MostListed ? [Photos(audit), ""] : [];
        return string.Join(Environment.NewLine, [.. photos, Kinds(audit), "", .. Figures(audit.Summary)]);
    }

    private static string Photos(Audit audit)
    {
        Table table = new("photo", "kind", "marks", "found", "false", "largest error/mm", "in region", "result");
        foreach (AuditedPhoto photo in audit.Photos)
        {
            table.Add(
                photo.Name,
                photo.Kind,
                Count(photo.Truth?.Marks.Count),
                Count(photo.Found.Count),
                Count(photo.False),
                photo.Found.Count == 0 ? "-" : Words.Fixed(photo.Found.Max(f => f.Error.Magnitude), 4),
                photo.Found.Count == 0 ? "-" : $"{photo.Found.Count(f => f.Covered)} of {photo.Found.Count}",
                Result(photo));
        }

        return table.ToString();
    }

    private static string Kinds(Audit audit)
    {
        Table table = new(
            "kind", "photos", "marks", "found/%", "false", "false/%", "rms/mm", "median/mm", "max/mm", "stated/mm", "in region/%", "95 % interval", "d median", "d max", "far");
        foreach (AuditKind kind in audit.Kinds)
            table.Add(Row(kind.Kind, kind));
        table.Add(Row("all", audit.Summary));
        return table.ToString();
    }

    private static string[] Row(string name, AuditSummary s) =>
    [
        name,
        Count(s.Photos),
        Count(s.Truths),
        Number(100 * s.FoundRate, 1),
        Count(s.False),
        Number(100 * s.FalseRate, 1),
        Number(s.Rms, 4),
        Number(s.Median, 4),
        Number(s.Max, 4),
        Number(s.StatedRms, 4),
        Number(100 * s.Coverage, 1),
        s.Coverage is null ? "-" : $"{Number(100 * s.CoverageLow, 1)} to {Number(100 * s.CoverageHigh, 1)}",
        Number(s.MedianMahalanobis, 2),
        Number(s.MaxMahalanobis, 2),
        Count(s.BeyondThrice),
    ];

    private static IEnumerable<string> Figures(AuditSummary s)
    {
        yield return $"{s.Photos} photos, {s.AsExpected} as expected; {s.Truths} marks, {s.Found} found, {s.Missed} missed, {s.False} false";
        if (s.BadFiles > 0)
            yield return $"{s.BadFiles} truth files cannot be used";
        if (s.Found > 0)
        {
            yield return $"error/mm: rms {Words.Fixed(s.Rms!.Value, 4)}, median {Words.Fixed(s.Median!.Value, 4)}, largest {Words.Fixed(s.Max!.Value, 4)}, mean u {Words.Fixed(s.BiasU!.Value, 4)}, v {Words.Fixed(s.BiasV!.Value, 4)}";
            yield return $"stated rms {Words.Fixed(s.StatedRms!.Value, 4)} mm; {Words.Fixed(100 * s.Coverage!.Value, 1)} % of the truths lie in the stated 95 % region (95 % interval {Number(100 * s.CoverageLow, 1)} to {Number(100 * s.CoverageHigh, 1)} %)";
            yield return $"Mahalanobis distance d: median {Number(s.MedianMahalanobis, 2)} (1.18 when the statements are right), largest {Number(s.MaxMahalanobis, 2)}; far: {s.BeyondThrice} beyond three times the 95 % region (d over 7.34)";
        }
    }

    private static string Result(AuditedPhoto photo) => photo switch
    {
        { FilesAreSound: false } => photo.Refusal!.Code.Name,
        { AsExpected: true, Refusal: { } refusal } => $"{refusal.Code.Name}, as expected",
        { AsExpected: true } => "ok",
        { Truth.ExpectedError: { } code } => $"{photo.Refusal?.Code.Name ?? "measured"}, expected {code}",
        { Refusal: { } refusal } => refusal.Code.Name,
        _ => photo.Missed > 0 ? "missed" : "false mark",
    };

    private static string Number(double? value, int decimals) => value is { } v ? Words.Fixed(v, decimals) : "-";

    private static string Count(int? value) => value?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-";
}
