using System.Globalization;
using MarkReader.Application.Measuring;
using MarkReader.Application.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Uploads;

namespace MarkReader.Service.Pages.Studies;

/// <summary>The fields of a study's plan as they were typed.</summary>
/// <param name="Length">Tolerance of marks, path of pulses; in the unit of <paramref name="Figures"/>.</param>
/// <param name="People">One on each line.</param>
/// <param name="Figures">In which the fields were typed.</param>
public sealed record StudyFields(StudyKind Kind, string Name, string Length, string People, string Count, Figures Figures)
{
    /// <summary>Photos each, and pulses, of a study that is to be begun.</summary>
    public const int UsualPhotos = 3, UsualPulses = 12;

    /// <summary>What was typed of the card and the tape, by <see cref="CardFields.Names"/>.</summary>
    public IReadOnlyDictionary<string, string> Card { get; private init; } = new Dictionary<string, string>();

    public CardReadingsView CardReadings => new(Part + "-", Figures, Card.GetValueOrDefault, WrongIn);

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
        double?[] card = [setup.Card.RulerU, setup.Card.RulerV, setup.Card.RulerUncertainty, setup.Card.TapeHeight, setup.Card.TapeHeightUncertainty];
        return new(setup.Kind, setup.Name, length is { } l ? figures.Field(l.Millimetres) : "", string.Join('\n', setup.People), Text(setup.Count), figures)
        {
            Card = CardFields.Names.Zip(card).ToDictionary(c => c.First, c => c.Second is { } mm ? figures.Field(mm) : ""),
        };
    }

    /// <summary>The fields of a form that was sent.</summary>
    internal static StudyFields Of(StudyKind kind, IFormCollection form)
    {
        string Get(string name) => form[name].FirstOrDefault() ?? "";
        return new(kind, Get("name"), Get("length"), Get("people"), Get("count"), new(Preferences.Named(Get("display")))) { Card = CardFields.Names.ToDictionary(name => name, Get) };
    }

    /// <param name="now">The study that is to be changed; what is unchanged of its card stays to the last digit.</param>
    public Outcome<StudySetup> Read(StudySetup? now = null)
    {
        if (CardFields.Names.Select(Typed).FirstOrDefault(t => t is not null && !t.TryGet(out _, out _)) is { } unreadable && !unreadable.TryGet(out _, out Failure? wrong))
            return wrong;
        return Plan(now).TryGet(out StudySetup? setup, out Failure? failure) ? setup.With(now is not null && IsCardOf(now) ? now.Card : CardOf()) : failure;
    }

    private Outcome<StudySetup> Plan(StudySetup? now)
    {
        int count = int.TryParse(Count, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out int whole) ? whole : -1;
        if (Kind == StudyKind.Pulses && Length.Trim().Length == 0)
            return StudySetup.OfPulses(Name, null, count);
        if (!Figures.ReadMillimetres(Length).TryGet(out TypedLength? length, out Failure? failure))
            return failure;
        // What is unchanged stays to the last digit, whichever unit it was shown in.
        Length shown = (now is null ? null : Kind == StudyKind.Pulses ? now.Path : now.Tolerance) ?? StudyRequest.UsualTolerance;
        Length read = Length.Trim() == Figures.Field(shown.Millimetres) ? shown : Quantities.Length.FromMillimetres(length.Millimetres);
        return Kind == StudyKind.Pulses ? StudySetup.OfPulses(Name, read, count) : StudySetup.OfMarks(Name, read, People.Split('\n'), count);
    }

    private bool IsCardOf(StudySetup setup)
    {
        IReadOnlyDictionary<string, string> shown = Of(setup, Figures).Card;
        return CardFields.Names.All(name => (Card.GetValueOrDefault(name) ?? "").Trim() == shown[name]);
    }

    private CardInput CardOf() => CardFields.Read(name => Typed(name) is { } typed && typed.TryGet(out TypedLength? length, out _) ? length.Millimetres : null);

    // Null for a blank field.
    private Outcome<TypedLength>? Typed(string name) => string.IsNullOrWhiteSpace(Card.GetValueOrDefault(name)) ? null : Figures.ReadMillimetres(Card[name]);

    public StudyFields Refused(Failure failure) => this with { Wrong = failure };

    /// <summary>What is wrong with a field: name, length, people, count, or form for what belongs to none.</summary>
    public Failure? WrongIn(string field) => Wrong is { } wrong && FieldOf(wrong.Code) == field ? wrong : null;

    private string FieldOf(FailureCode code) =>
        code == StudyInputFailures.NameInvalid ? "name"
        : code == StudyInputFailures.PeopleInvalid ? "people"
        : code == StudyInputFailures.CountInvalid ? "count"
        : code == Application.Inputs.NumberText.Unreadable && CardFields.Names.FirstOrDefault(n => Typed(n) is { } t && !t.TryGet(out _, out _)) is { } unreadable ? unreadable
        : CardFields.Of(code, CardOf()) is { } card ? card
        : code == StudyInputFailures.LengthInvalid || code == Application.Inputs.NumberText.Unreadable ? "length"
        : "form";

    private static string Text(int count) => count.ToString(CultureInfo.InvariantCulture);
}
