using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Words that go with a visit: {"note": "…", "doneBy": "…"}.</summary>
/// <param name="Note">May be empty.</param>
/// <param name="DoneBy">Who does the work; may be empty.</param>
public sealed record VisitDescription(string Note, string DoneBy)
{
    /// <summary>Longest note, UTF-16 units.</summary>
    public const int LongestNote = 500;

    /// <summary>Longest name of who does the work, UTF-16 units.</summary>
    public const int LongestName = 80;

    public static Outcome<VisitDescription> Read(ReadOnlyMemory<byte> bytes)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 2 }, out string unreadable);
        if (document is null)
            return new Failure(VisitLogFailures.BeginningUnreadable, VisitLogTexts.Word("visitDescription.visitWords", unreadable), VisitLogTexts.Get("visitDescription.writeNoteDoneby"));
        JsonFields fields = new(VisitLogFailures.BeginningUnreadable);
        VisitDescription words = Read(fields, fields.Object(document.RootElement, VisitLogTexts.Get("visitDescription.visitWords2"), "note", "doneBy"));
        return fields.Wrong is { } wrong ? wrong : words;
    }

    /// <summary>Words that were typed.</summary>
    public static Outcome<VisitDescription> Check(string note, string doneBy)
    {
        JsonFields fields = new(VisitLogFailures.BeginningUnreadable);
        VisitDescription words = Checked(fields, VisitLogTexts.Get("common.visit"), note, doneBy);
        return fields.Wrong is { } wrong ? wrong : words;
    }

    internal static VisitDescription Read(JsonFields fields, JsonObject of) => Checked(fields, of.Where, of.Text("note", ""), of.Text("doneBy", ""));

    private static VisitDescription Checked(JsonFields fields, Wording where, string noteText, string name)
    {
        string note = noteText.ReplaceLineEndings("\n").Trim(), doneBy = name.Trim();
        if (note.Length > LongestNote || note.Any(c => char.IsControl(c) && c is not '\n'))
            fields.Refuse(VisitLogTexts.Word("visitDescription.noteLongerThanSignsOr", where, LongestNote), VisitLogTexts.Get("visitDescription.shorten"));
        if (doneBy.Length > LongestName || doneBy.Any(char.IsControl))
            fields.Refuse(VisitLogTexts.Word("visitDescription.donebyLongerThanSignsOr", where, LongestName), VisitLogTexts.Get("visitDescription.giveNameWhoDoesWork"));
        return new(note, doneBy);
    }
}
