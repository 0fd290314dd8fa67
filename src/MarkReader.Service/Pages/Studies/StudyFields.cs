using System.Globalization;
using MarkReader.Application.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Display;

namespace MarkReader.Service.Pages.Studies;

/// <summary>The fields of a study's plan as they were typed.</summary>
/// <param name="Length">Tolerance of marks, path of pulses; in the unit of <paramref name="Figures"/>.</param>
/// <param name="People">One on each line.</param>
/// <param name="Figures">In which the fields were typed.</param>
public sealed record StudyFields(StudyKind Kind, string Name, string Length, string People, string Count, Figures Figures)
{
    /// <summary>Photos each, and pulses, of a study that is to be begun.</summary>
    public const int UsualPhotos = 3, UsualPulses = 12;

    /// <summary>What is wrong with them; null when nothing is.</summary>
    public Failure? Wrong { get; private init; }

    /// <summary>marks or pulses.</summary>
    public string Part => StudySetupText.Name(Kind);

    /// <summary>The fields of a study that is to be begun.</summary>
    /// <param name="people">Names to begin with.</param>
    public static StudyFields Blank(StudyKind kind, string people, Figures figures) => kind == StudyKind.Marks
        ? new(kind, "", figures.Field(StudyRequest.UsualTolerance.Millimetres), people, Text(UsualPhotos), figures)
        : new(kind, "", "", "", Text(UsualPulses), figures);

    public static StudyFields Of(StudySetup setup, Figures figures)
    {
        Length? length = setup.Kind == StudyKind.Marks ? setup.Tolerance : setup.Path;
        return new(setup.Kind, setup.Name, length is { } l ? figures.Field(l.Millimetres) : "", string.Join('\n', setup.People), Text(setup.Count), figures);
    }

    /// <summary>The fields of a form that was sent.</summary>
    internal static StudyFields Of(StudyKind kind, IFormCollection form)
    {
        string Get(string name) => form[name].FirstOrDefault() ?? "";
        return new(kind, Get("name"), Get("length"), Get("people"), Get("count"), new(Preferences.Named(Get("display"))));
    }

    public Outcome<StudySetup> Read()
    {
        int count = int.TryParse(Count, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out int whole) ? whole : -1;
        if (Kind == StudyKind.Pulses && Length.Trim().Length == 0)
            return StudySetup.OfPulses(Name, null, count);
        if (!Figures.ReadMillimetres(Length).TryGet(out TypedLength? length, out Failure? failure))
            return failure;
        Length read = Quantities.Length.FromMillimetres(length.Millimetres);
        return Kind == StudyKind.Pulses ? StudySetup.OfPulses(Name, read, count) : StudySetup.OfMarks(Name, read, People.Split('\n'), count);
    }

    public StudyFields Refused(Failure failure) => this with { Wrong = failure };

    /// <summary>What is wrong with a field: name, length, people, count, or form for what belongs to none.</summary>
    public Failure? WrongIn(string field) => Wrong is { } wrong && FieldOf(wrong.Code) == field ? wrong : null;

    private static string FieldOf(FailureCode code) =>
        code == StudyInputFailures.NameInvalid ? "name"
        : code == StudyInputFailures.PeopleInvalid ? "people"
        : code == StudyInputFailures.CountInvalid ? "count"
        : code == StudyInputFailures.LengthInvalid || code == Application.Inputs.NumberText.Unreadable ? "length"
        : "form";

    private static string Text(int count) => count.ToString(CultureInfo.InvariantCulture);
}
