using MarkReader.Application.Reports;
using MarkReader.Application.Storage;

namespace MarkReader.Service.Api.Answers;

/// <summary>A photo that is kept.</summary>
/// <param name="Id">SHA-256 of its bytes, in hexadecimal digits.</param>
/// <param name="Format">jpeg, png or webp.</param>
/// <param name="Bytes">Size of the file.</param>
/// <param name="ReceivedAt">When it first came in.</param>
/// <param name="Original">Address of the bytes as they came in.</param>
/// <param name="MeasuredAt">When it was measured; null when it was not.</param>
/// <param name="ProgramVersion">The version of the program that measured it.</param>
/// <param name="Measurement">The card and the marks; null when it could not be measured.</param>
/// <param name="Refusal">Why it could not be measured.</param>
internal sealed record PhotoAnswer(
    string Id,
    string Format,
    long Bytes,
    DateTimeOffset ReceivedAt,
    string Original,
    DateTimeOffset? MeasuredAt,
    string? ProgramVersion,
    MeasureReport? Measurement,
    RefusalAnswer? Refusal)
{
    public static PhotoAnswer From(KeptPhoto photo, KeptMeasurement? measurement) => new(
        photo.Id,
        photo.Format.Name,
        photo.Length,
        photo.ReceivedAt,
        $"/api/photos/{photo.Id}/original",
        measurement?.MeasuredAt,
        measurement?.ProgramVersion,
        measurement is null ? null : KeptReports.Read<MeasureReport>(measurement.Answer),
        measurement is null ? null : RefusalAnswer.From(measurement.Answer));
}

/// <summary>A page of photos, newest first.</summary>
/// <param name="Photos">The photos, without what was measured.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record PhotoList(IReadOnlyList<PhotoEntry> Photos, string? Next);

/// <summary>A photo in a list.</summary>
internal sealed record PhotoEntry(string Id, string Format, long Bytes, DateTimeOffset ReceivedAt)
{
    public static PhotoEntry From(KeptPhoto photo) => new(photo.Id, photo.Format.Name, photo.Length, photo.ReceivedAt);
}
