using MarkReader.Application.Auditing;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

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
        Table table = new(Get("audit.photo"), Get("audit.kind"), Get("audit.marks"), Get("audit.found"), Get("audit.false"), Get("audit.largestErrorMm"), Get("audit.inRegion"), Get("audit.result"));
        foreach (AuditedPhoto photo in audit.Photos)
        {
            table.Add(
                photo.Name,
                photo.Kind,
                Count(photo.Truth?.Marks.Count),
                Count(photo.Found.Count),
                Count(photo.False),
                photo.Found.Count == 0 ? "-" : Words.Fixed(photo.Found.Max(f => f.Error.Magnitude), 4),
                photo.Found.Count == 0 ? "-" : Say("of", photo.Found.Count(f => f.Covered), photo.Found.Count),
                photo.CameraNotUsed is null ? Result(photo) : Say("audit.withoutProfile", Result(photo)));
        }

        return table.ToString();
    }

    private static string Kinds(Audit audit)
    {
        Table table = new(
            Get("audit.kind"), Get("audit.photos"), Get("audit.marks"), Get("audit.found2"), Get("audit.false"), Get("audit.false2"), Get("audit.rmsMm"), Get("audit.medianMm"), Get("audit.maxMm"), Get("audit.statedMm"), Get("audit.inRegion2"), Get("audit.95Interval"), Get("audit.dMedian"), Get("audit.dMax"), Get("audit.far"));
        foreach (AuditKind kind in audit.Kinds)
            table.Add(Row(kind.Kind, kind));
        table.Add(Row(Get("audit.all"), audit.Summary));
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
        s.Coverage is null ? "-" : Say("range", Number(100 * s.CoverageLow, 1), Number(100 * s.CoverageHigh, 1)),
        Number(s.MedianMahalanobis, 2),
        Number(s.MaxMahalanobis, 2),
        Count(s.BeyondThrice),
    ];

    private static IEnumerable<string> Figures(AuditSummary s)
    {
        yield return Say("audit.photosAsExpectedMarks", s.Photos, s.AsExpected, s.Truths, s.Found, s.Missed, s.False);
        if (s.BadFiles > 0)
            yield return Say("audit.truthFilesCannotBe", s.BadFiles);
        if (s.CameraNotUsed > 0)
            yield return Say("audit.cameraNotUsed", s.CameraNotUsed, s.Photos);
        if (s.Found > 0)
        {
            yield return Say("audit.errorMmRmsMedian", Words.Fixed(s.Rms!.Value, 4), Words.Fixed(s.Median!.Value, 4), Words.Fixed(s.Max!.Value, 4), Words.Fixed(s.BiasU!.Value, 4), Words.Fixed(s.BiasV!.Value, 4));
            yield return Say("audit.statedRmsMmOf", Words.Fixed(s.StatedRms!.Value, 4), Words.Fixed(100 * s.Coverage!.Value, 1), Number(100 * s.CoverageLow, 1), Number(100 * s.CoverageHigh, 1));
            yield return Say("audit.mahalanobisDistanceDMedian", Number(s.MedianMahalanobis, 2), Number(s.MaxMahalanobis, 2), s.BeyondThrice);
        }
    }

    private static string Result(AuditedPhoto photo) => photo switch
    {
        { FilesAreSound: false } => photo.Refusal!.Code.Name,
        { AsExpected: true, Refusal: { } refusal } => Say("audit.asExpected", refusal.Code.Name),
        { AsExpected: true } => Get("audit.ok"),
        { Truth.ExpectedError: { } code } => Say("audit.expected", photo.Refusal?.Code.Name ?? Get("audit.measured"), code),
        { Refusal: { } refusal } => refusal.Code.Name,
        _ => photo.Missed > 0 ? Get("audit.missed") : Get("audit.falseMark"),
    };

    private static string Number(double? value, int decimals) => value is { } v ? Words.Fixed(v, decimals) : "-";

    private static string Count(int? value) => value?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-";
}
