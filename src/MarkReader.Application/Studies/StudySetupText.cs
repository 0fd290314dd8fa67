using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>A study's plan as programs send it (JSON), lengths in mm.</summary>
public static class StudySetupText
{
    /// <summary>Largest text, bytes.</summary>
    public const int MostBytes = 8 << 10;

    /// <summary>marks or pulses.</summary>
    public static string Name(StudyKind kind) => JsonNamingPolicy.CamelCase.ConvertName(kind.ToString());

    /// <summary>{"kind": "marks", "name": …, "tolerance": 0.5, "people": […], "photosEach": 3} or {"kind": "pulses", "name": …, "path": 480, "pulses": 12}; both perhaps with "rulerU", "rulerV", "rulerUncertainty", "tapeHeight", "tapeHeightUncertainty".</summary>
    public static Outcome<StudySetup> Read(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return new Failure(StudyInputFailures.SetupUnreadable, KeptStudyTexts.Word("setup.json", unreadable), KeptStudyTexts.Get("setup.jsonHint"));
        JsonFields fields = new(StudyInputFailures.SetupUnreadable);
        JsonObject setup = fields.Object(document.RootElement, KeptStudyTexts.Get("setup.of"), "kind", "name", "tolerance", "people", "photosEach", "path", "pulses", "rulerU", "rulerV", "rulerUncertainty", "tapeHeight", "tapeHeightUncertainty");
        StudyKind kind = setup.Choice<StudyKind>("kind");
        string name = setup.Text("name");
        double? Measured(string field) => setup.Has(field) ? setup.Millimetres(field) : null;
        CardInput card = new(Measured("rulerU"), Measured("rulerV"), Measured("rulerUncertainty"), Measured("tapeHeight"), Measured("tapeHeightUncertainty"));
        if (kind == StudyKind.Pulses)
        {
            double? path = setup.Has("path") ? setup.Millimetres("path") : null;
            double pulses = setup.Number("pulses");
            return fields.Wrong is { } bad ? bad : With(card, StudySetup.OfPulses(name, path is { } mm ? Length.FromMillimetres(mm) : null, Whole(pulses)));
        }

        double tolerance = setup.Millimetres("tolerance", StudyRequest.UsualTolerance.Millimetres), each = setup.Number("photosEach");
        IReadOnlyList<JsonElement> people = setup.List("people", required: true);
        if (people.Any(p => p.ValueKind != JsonValueKind.String))
            fields.Refuse(KeptStudyTexts.Get("setup.people"), KeptStudyTexts.Get("setup.jsonHint"));
        return fields.Wrong is { } wrong ? wrong : With(card, StudySetup.OfMarks(name, Length.FromMillimetres(tolerance), people.Select(p => p.GetString()!), Whole(each)));
    }

    /// <summary>The machine in {"machine": 3}.</summary>
    public static Outcome<MachineChoice> ReadMachine(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return new Failure(StudyInputFailures.SetupUnreadable, KeptStudyTexts.Word("machine.json", unreadable), KeptStudyTexts.Get("machine.jsonHint"));
        JsonFields fields = new(StudyInputFailures.SetupUnreadable);
        double id = fields.Object(document.RootElement, KeptStudyTexts.Get("machine.of"), "machine").Number("machine");
        return fields.Wrong is { } wrong ? wrong : new MachineChoice(Whole(id));
    }

    private static Outcome<StudySetup> With(CardInput card, Outcome<StudySetup> read) => read.TryGet(out StudySetup? setup, out _) ? setup.With(card) : read;

    // What is no count is none that a study may have.
    private static int Whole(double value) => value is >= 0 and <= int.MaxValue && value == Math.Floor(value) ? (int)value : -1;
}

/// <summary>A machine that was named.</summary>
/// <param name="Id">Its number; one that no machine has when no whole number was given.</param>
public sealed record MachineChoice(long Id);
