using System.Globalization;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Application.Studies;
using MarkReader.Quantities;

namespace MarkReader.Service.Api.Answers;

/// <summary>A study that is kept, with its result.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Version">Counts changes; the ETag.</param>
/// <param name="BegunAt">When it was begun.</param>
/// <param name="ChangedAt">When it last changed.</param>
/// <param name="Plan">What it is of.</param>
/// <param name="Photos">In the order in which they came.</param>
/// <param name="HasReadings">Whether a table of readings stands in place of photos.</param>
/// <param name="People">How far each person or phone is; empty for pulses.</param>
/// <param name="Pulses">Marks of pulses so far.</param>
/// <param name="Missing">Photos, or pulses, that the plan still asks for.</param>
/// <param name="NotYet">Why there is no result; null when there is one.</param>
/// <param name="Marks">The result of a study of marks, or null.</param>
/// <param name="Scatter">The result of a study of pulses, or null.</param>
/// <param name="Document">Address of the result on paper, or null.</param>
internal sealed record KeptStudyAnswer(
    long Id,
    long Version,
    DateTimeOffset BegunAt,
    DateTimeOffset ChangedAt,
    StudyPlanAnswer Plan,
    IReadOnlyList<StudyPhotoAnswer> Photos,
    bool HasReadings,
    IReadOnlyList<PersonStanding> People,
    int Pulses,
    int Missing,
    RefusalAnswer? NotYet,
    StudyReport? Marks,
    ScatterReport? Scatter,
    string? Document)
{
    public static KeptStudyAnswer From(KeptStudy kept)
    {
        StudyStanding standing = StudyStanding.Of(kept);
        StudyEntry entry = kept.Entry;
        return new(
            entry.Id,
            entry.Version,
            entry.BegunAt,
            entry.ChangedAt,
            StudyPlanAnswer.From(entry.Setup),
            [.. kept.Photos.Select(StudyPhotoAnswer.From)],
            entry.HasReadings,
            standing.People,
            standing.Pulses,
            standing.Missing,
            standing.NotYet is { } failure ? new(failure.Code.Name, failure.Message, failure.Hint) : null,
            standing.Marks is { } marks ? StudyReport.From(marks) : null,
            standing.Scatter is { } scatter ? ScatterReport.From(scatter) : null,
            standing.NotYet is null ? Address(entry.Id) + "/report.pdf" : null);
    }

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/studies/{id}");
}

/// <summary>A study's plan, lengths in mm.</summary>
/// <param name="Tolerance">Null for pulses.</param>
/// <param name="PhotosEach">Null for pulses.</param>
/// <param name="Path">Null when it is not known.</param>
/// <param name="Pulses">Null for marks.</param>
/// <param name="Card">What was measured of the print and the tape, mm; null: nothing.</param>
internal sealed record StudyPlanAnswer(StudyKind Kind, string Name, double? Tolerance, IReadOnlyList<string> People, int? PhotosEach, double? Path, int? Pulses, CardInput? Card)
{
    public static StudyPlanAnswer From(StudySetup s) => new(
        s.Kind, s.Name, s.Tolerance?.Millimetres, s.People, s.Kind == StudyKind.Marks ? s.Count : null, s.Path?.Millimetres, s.Kind == StudyKind.Pulses ? s.Count : null, s.Card == CardInput.Nothing ? null : s.Card);
}

/// <summary>A photo of a study.</summary>
/// <param name="Number">From 1, in its study.</param>
/// <param name="Person">Who took it, or with which phone; empty for pulses.</param>
/// <param name="File">Name of the file that was sent.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="Marks">Its marks, by u; null when it is not used.</param>
/// <param name="Refusal">Why it is not used; null when it is.</param>
internal sealed record StudyPhotoAnswer(int Number, string Person, string File, DateTimeOffset AddedAt, IReadOnlyList<StudyMarkAnswer>? Marks, RefusalAnswer? Refusal)
{
    public static StudyPhotoAnswer From(KeptStudyPhoto photo) => new(
        photo.Number,
        photo.Person,
        photo.File,
        photo.AddedAt,
        photo.Marks?.Select(m => new StudyMarkAnswer(m.At.Point.U, m.At.Point.V, StudyMarkAnswer.Matrix(m.At.Covariance))).ToArray(),
        photo.Refusal is { } failure ? new(failure.Code.Name, failure.Message, failure.Hint) : null);
}

/// <summary>A mark in the card frame, mm.</summary>
/// <param name="Covariance">Of u and v, everything known included, mm².</param>
internal sealed record StudyMarkAnswer(double U, double V, double[][] Covariance)
{
    internal static double[][] Matrix(Covariance2 c) => [[c.Uu, c.Uv], [c.Uv, c.Vv]];
}

/// <summary>A study in a list.</summary>
/// <param name="Photos">How many photos were sent to it.</param>
/// <param name="HasReadings">Whether a table of readings stands in place of photos.</param>
internal sealed record StudyEntryAnswer(long Id, long Version, DateTimeOffset BegunAt, DateTimeOffset ChangedAt, StudyPlanAnswer Plan, int Photos, bool HasReadings)
{
    public static StudyEntryAnswer From(StudyEntry e) => new(e.Id, e.Version, e.BegunAt, e.ChangedAt, StudyPlanAnswer.From(e.Setup), e.Photos, e.HasReadings);
}

/// <summary>A page of studies, newest first.</summary>
/// <param name="Studies">The studies, without their photos.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record StudyList(IReadOnlyList<StudyEntryAnswer> Studies, string? Next);
