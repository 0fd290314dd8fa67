using System.Text;
using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Cameras;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>One event as it is kept.</summary>
/// <param name="Text">As a visit file has it (JSON).</param>
/// <param name="Photo">Id of the photo that gave its mark, or null.</param>
internal sealed record EventDocument(string Text, string? Photo)
{
    // What the photo gives instead.
    private static readonly string[] s_measured = ["u", "v", "uncertainty", "covariance"];

    /// <summary>
    /// Reads an event that was sent: JSON of its own, so that nothing else can come in with it. In place of u, v and their uncertainty there may be "photo" with
    /// "mark" (number in the photo's marks, from 0) or with "tap" (a place in the photo, {"x": …, "y": …} in px): then the mark is taken from the photo, and the
    /// scatter of the machine's pulses is added to its covariance.
    /// </summary>
    public static Outcome<EventDocument> Read(ReadOnlyMemory<byte> bytes, PhotoStore photos, CameraStore cameras, KeptVisit visit)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return Unreadable(VisitLogTexts.Say("eventDocument.event", unreadable));
        if (document.RootElement.ValueKind != JsonValueKind.Object)
            return Unreadable(VisitLogTexts.Get("eventDocument.eventNotObject"));
        JsonFields fields = new(VisitLogFailures.EventUnreadable);
        JsonObject e = new(fields, document.RootElement, VisitLogTexts.Get("eventDocument.event2"));
        if (!e.Has("mark") && !e.Has("tap"))
            return new EventDocument(Encoding.UTF8.GetString(JsonText.WithoutMark(bytes).Span), null);
        string photo = e.Text("photo");
        double number = e.Number("mark", -1);
        PixelPoint? tap = e.Find("tap") is { } place ? Tap(fields, place) : null;
        if (fields.Wrong is { } wrong)
            return wrong;
        if (s_measured.Concat(tap is null ? [] : ["mark"]).FirstOrDefault(e.Has) is { } twice)
            return new Failure(VisitLogFailures.EventUnreadable, VisitLogTexts.Word("eventDocument.eventHasBothAnd", tap is null ? "mark" : "tap", twice), VisitLogTexts.Get("eventDocument.givePhotoAndMarkOr"));
        Outcome<MarkReport> found = tap is null ? PhotoMarks.Numbered(photos, photo, number) : PhotoMarks.At(photos, cameras, photo, tap.Value);
        if (!found.TryGet(out MarkReport? mark, out Failure? failure) || !AdviseVisit.Read(visit).TryGet(out Visit? read, out failure))
            return failure;
        if (visit.Events.FirstOrDefault(kept => kept.Photo == photo && IsSame(kept.Text, mark)) is { } used)
            return new Failure(VisitLogFailures.PhotoMarkUsed, VisitLogTexts.Word("eventDocument.thisMarkThisVeryPhoto", used.Number), VisitLogTexts.Get("eventDocument.firePulseThatAskedFor"));
        return new EventDocument(Fill(document.RootElement, mark, read.Setup.PulseScatter), photo);
    }

    private static bool IsSame(string text, MarkReport mark)
    {
        using JsonDocument kept = JsonDocument.Parse(text);
        return kept.RootElement.GetProperty("u").GetDouble() == mark.U && kept.RootElement.GetProperty("v").GetDouble() == mark.V;
    }

    private static PixelPoint Tap(JsonFields fields, JsonElement element)
    {
        JsonObject tap = fields.Object(element, VisitLogTexts.Get("eventDocument.eventTap"), "x", "y");
        return new(tap.Number("x"), tap.Number("y"));
    }

    private static string Fill(JsonElement e, MarkReport mark, Length scatter)
    {
        double variance = scatter.Millimetres * scatter.Millimetres;
        double[][] c = mark.Covariance;
        using MemoryStream text = new();
        using (Utf8JsonWriter writer = new(text, new() { Encoder = ReportJson.Options.Encoder }))
        {
            writer.WriteStartObject();
            foreach (JsonProperty field in e.EnumerateObject())
                field.WriteTo(writer);
            writer.WriteNumber("u", mark.U);
            writer.WriteNumber("v", mark.V);
            writer.WritePropertyName("covariance");
            JsonSerializer.Serialize<double[][]>(writer, [[c[0][0] + variance, c[0][1]], [c[1][0], c[1][1] + variance]]);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(text.ToArray());
    }

    private static Failure Unreadable(string what) => new(VisitLogFailures.EventUnreadable, what, VisitLogTexts.Get("eventDocument.sendOneEventAsVisit"));
}
