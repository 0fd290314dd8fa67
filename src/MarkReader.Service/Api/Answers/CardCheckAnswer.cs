using System.Globalization;
using MarkReader.Application.CardChecks;

namespace MarkReader.Service.Api.Answers;

/// <summary>A check of a printed card.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Name">What it is called; empty for nothing.</param>
/// <param name="AddedAt">When it was made.</param>
/// <param name="Camera">Address of the camera with whose profile it was made; null when that was deleted.</param>
/// <param name="Picture">Address of the zone with its errors; .png for the same as a PNG.</param>
/// <param name="Page">Address of the page that shows it.</param>
/// <param name="Words">The verdict, what to do, and what was found, in sentences.</param>
/// <param name="Report">What was found: mm, px for residuals.</param>
internal sealed record CardCheckAnswer(long Id, string Name, DateTimeOffset AddedAt, string? Camera, string Picture, string Page, IReadOnlyList<string> Words, CardCheckReport Report)
{
    public static CardCheckAnswer From(KeptCardCheck kept) => new(
        kept.Id,
        kept.Name,
        kept.AddedAt,
        kept.CameraId is { } camera ? CameraAnswer.Address(camera) : null,
        Address(kept.Id) + "/picture.svg",
        string.Create(CultureInfo.InvariantCulture, $"/cameras/card-checks/{kept.Id}"),
        [CardCheckWords.Verdict(kept.Report).ToString(), .. CardCheckWords.Advice(kept.Report).Select(a => a.ToString()), .. CardCheckWords.Facts(kept.Report).Select(f => f.ToString())],
        kept.Report);

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/card-checks/{id}");
}

/// <summary>A page of checks, newest first.</summary>
/// <param name="Checks">The checks, without their reports.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record CardCheckList(IReadOnlyList<CardCheckEntry> Checks, string? Next);

/// <summary>A check in a list.</summary>
/// <param name="Name">What it is called; empty for nothing.</param>
/// <param name="Kind">Which card.</param>
/// <param name="Camera">Name of the profile.</param>
/// <param name="Verdict">good, notGood or cannotTell.</param>
/// <param name="SizeJudged">Whether the print's size is among what was judged; without it a good card is good in shape.</param>
/// <param name="WorstAtMost">The worst error of a mark is smaller, with 95 % confidence, mm.</param>
internal sealed record CardCheckEntry(long Id, string Name, DateTimeOffset AddedAt, string Kind, string Camera, string Verdict, bool SizeJudged, double WorstAtMost)
{
    public static CardCheckEntry From(KeptCardCheck kept) => new(
        kept.Id, kept.Name, kept.AddedAt, kept.Report.Card.Kind, kept.Report.Camera, kept.Report.Verdict, kept.Report.SizeJudged, kept.Report.AsDrawn.WorstAtMost);
}
