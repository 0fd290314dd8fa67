using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>What a visit is begun with: {"machine": 3, "note": "…", "doneBy": "…"}, or with "practice": {"seed": 6} in place of the machine.</summary>
/// <param name="MachineId">Number of a machine that is kept; null for a practice machine.</param>
/// <param name="Note">May be empty.</param>
/// <param name="DoneBy">Who does the work; may be empty.</param>
/// <param name="Practice">The practice machine; null for one that is kept.</param>
public sealed record VisitBeginning(long? MachineId, string Note, string DoneBy = "", PracticeRequest? Practice = null)
{
    /// <summary>Largest text of it, bytes.</summary>
    public const int MostBytes = 4 << 10;

    private const int MostSeeds = 1_000_000;

    private const double LargestId = 1L << 53;

    public static Outcome<VisitBeginning> Read(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return new Failure(VisitLogFailures.BeginningUnreadable, VisitLogTexts.Word("visitBeginning.whatBeginsVisit", unreadable), VisitLogTexts.Get("visitBeginning.writeMachineWithNumberMachine"));
        JsonFields fields = new(VisitLogFailures.BeginningUnreadable);
        JsonObject beginning = fields.Object(document.RootElement, VisitLogTexts.Get("visitBeginning.whatBeginsVisit2"), "machine", "practice", "note", "doneBy");
        PracticeRequest? practice = beginning.Find("practice") is { } wanted ? Practise(fields, wanted) : null;
        double machine = practice is null ? beginning.Number("machine") : 0;
        VisitDescription words = VisitDescription.Read(fields, beginning);
        if (!(machine >= 0 && machine <= LargestId) || machine != Math.Floor(machine))
            fields.Refuse(VisitLogTexts.Get("visitBeginning.machineWhatBeginsVisitNot"), VisitLogTexts.Get("visitBeginning.giveIdMachineThatKept"));
        return fields.Wrong is { } wrong ? wrong : new VisitBeginning(practice is null ? (long)machine : null, words.Note, words.DoneBy, practice);
    }

    internal static PracticeRequest Practise(JsonFields fields, JsonElement element)
    {
        JsonObject wanted = fields.Object(element, VisitLogTexts.Get("visitBeginning.practiceMachine"), "seed", "slope", "twist", "bend", "mark", "tolerance");
        double seed = wanted.Number("seed");
        if (!(seed >= 0 && seed < MostSeeds) || seed != Math.Floor(seed))
            fields.Refuse(VisitLogTexts.Get("visitBeginning.seedPracticeMachineNotWhole"), VisitLogTexts.Get("visitBeginning.giveNumberMachineForExample"));
        PracticeRequest request = new(
            fields.Wrong is null ? (int)seed : 0,
            wanted.Number("slope", PracticeRequest.UsualSlope),
            wanted.Number("twist", 0),
            wanted.Number("bend", 0),
            wanted.Number("mark", PracticeRequest.UsualMark),
            wanted.Number("tolerance", PracticeRequest.UsualTolerance));
        if (request.Check() is { } wrong)
            fields.Refuse(wrong.Message, wrong.Hint);
        return request;
    }
}
