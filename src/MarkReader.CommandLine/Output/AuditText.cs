using MarkReader.Application.Auditing;

namespace MarkReader.CommandLine.Output;

/// <summary>An audit for people.</summary>
internal static class AuditText
{
    public static string Of(Audit audit)
    {
        Table table = new("photo", "marks", "found", "false", "largest error/mm", "in region", "result");
        foreach (AuditedPhoto photo in audit.Photos)
        {
            table.Add(
                photo.Name,
                Count(photo.Truth?.Marks.Count),
                Count(photo.Found.Count),
                Count(photo.False),
                photo.Found.Count == 0 ? "-" : Words.Fixed(photo.Found.Max(f => f.Error.Magnitude), 4),
                photo.Found.Count == 0 ? "-" : $"{photo.Found.Count(f => f.Covered)} of {photo.Found.Count}",
                Result(photo));
        }

        return string.Join(Environment.NewLine, [table.ToString(), "", .. Figures(audit.Summary)]);
    }

    private static IEnumerable<string> Figures(AuditSummary s)
    {
        yield return $"{s.Photos} photos, {s.AsExpected} as expected; {s.Truths} marks, {s.Found} found, {s.Missed} missed, {s.False} false";
        if (s.BadFiles > 0)
            yield return $"{s.BadFiles} truth files cannot be used";
        if (s.Found > 0)
        {
            yield return $"error/mm: rms {Words.Fixed(s.Rms!.Value, 4)}, median {Words.Fixed(s.Median!.Value, 4)}, largest {Words.Fixed(s.Max!.Value, 4)}, mean u {Words.Fixed(s.BiasU!.Value, 4)}, v {Words.Fixed(s.BiasV!.Value, 4)}";
            yield return $"stated rms {Words.Fixed(s.StatedRms!.Value, 4)} mm; {Words.Fixed(100 * s.Coverage!.Value, 1)} % of the truths lie in the stated 95 % region";
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

    private static string Count(int? value) => value?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-";
}
