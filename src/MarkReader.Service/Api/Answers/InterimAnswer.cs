using System.Globalization;
using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Service.Api.Answers;

/// <summary>A set of reference photos.</summary>
/// <param name="Id">Its number.</param>
/// <param name="KeptAt">When it was kept and measured first.</param>
/// <param name="Program">The version of the program that did so.</param>
/// <param name="State">How it stands with the version that answers: kept (by this version), due, asBefore, differs, cannotTell.</param>
/// <param name="Page">Address of the page that shows it.</param>
/// <param name="Words">The state, the outcome and what to do, in sentences.</param>
/// <param name="Photos">Its photos as they were kept.</param>
/// <param name="Check">What the version that answers measured beside that; null when it has not measured the set again.</param>
/// <param name="Checks">Every version that measured it again, the latest first.</param>
internal sealed record InterimAnswer(
    long Id, string Name, DateTimeOffset KeptAt, string Program, InterimState State, string Page, IReadOnlyList<string> Words, IReadOnlyList<InterimPhotoAnswer> Photos, InterimReport? Check, IReadOnlyList<InterimVersion> Checks)
{
    public static InterimAnswer From(KeptInterimSet set)
    {
        InterimState state = set.StateFor(ProgramVersion.Current);
        InterimCheck? check = set.CheckOf(ProgramVersion.Current);
        return new(
            set.Id,
            set.Name,
            set.Reference.Made,
            set.Reference.Program,
            state,
            PageOf(set.Id),
            [InterimWords.Short(state), .. check is null ? [] : (string[])[InterimWords.Outcome(check).ToString()], .. check is null || InterimWords.Advice(check) is not { } advice ? [] : (string[])[advice]],
            [.. set.Reference.Photos.Select(InterimPhotoAnswer.From)],
            check is null ? null : InterimReport.From(check),
            [.. set.Checks.Select(c => new InterimVersion(c.Program, c.Made, KeptInterimSet.Outcome(InterimCheck.Of(set.Reference, c))))]);
    }

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/interim/{id}");

    public static string PageOf(long id) => string.Create(CultureInfo.InvariantCulture, $"/interim/{id}");
}

/// <summary>A photo of a set.</summary>
/// <param name="Name">Of its file.</param>
/// <param name="Photo">Address of what is known of it.</param>
/// <param name="Marks">Sorted by u; none when it was refused.</param>
/// <param name="Refusal">Code of the refusal; null when it was measured.</param>
internal sealed record InterimPhotoAnswer(string Name, string Photo, IReadOnlyList<InterimMarkAnswer> Marks, string? Refusal)
{
    public static InterimPhotoAnswer From(InterimPhoto photo) => new(photo.Name, "/api/photos/" + photo.Digest, [.. photo.Marks.Select(InterimMarkAnswer.From)], photo.Refusal);
}

/// <summary>A mark of a photo of a set, mm.</summary>
/// <param name="Covariance">Of (u, v), mm².</param>
internal sealed record InterimMarkAnswer(double U, double V, double[][] Covariance)
{
    public static InterimMarkAnswer From(MeasuredPoint mark) => new(
        mark.Point.U, mark.Point.V, [[mark.Covariance.Uu, mark.Covariance.Uv], [mark.Covariance.Uv, mark.Covariance.Vv]]);
}

/// <summary>A version that measured a set again.</summary>
/// <param name="MeasuredAt">When.</param>
/// <param name="State">asBefore, differs, cannotTell.</param>
internal sealed record InterimVersion(string Program, DateTimeOffset MeasuredAt, InterimState State);

/// <summary>A page of sets, newest first.</summary>
/// <param name="Program">The version that answers.</param>
/// <param name="Due">How many of all sets it has not measured yet.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record InterimList(string Program, int Due, IReadOnlyList<InterimEntry> Sets, string? Next);

/// <summary>A set in a list.</summary>
/// <param name="Program">The version that kept it.</param>
/// <param name="Photos">How many it has.</param>
/// <param name="State">How it stands with the version that answers.</param>
internal sealed record InterimEntry(long Id, string Name, DateTimeOffset KeptAt, string Program, int Photos, InterimState State)
{
    public static InterimEntry From(KeptInterimSet set) => new(set.Id, set.Name, set.Reference.Made, set.Reference.Program, set.Reference.Photos.Count, set.StateFor(ProgramVersion.Current));
}
