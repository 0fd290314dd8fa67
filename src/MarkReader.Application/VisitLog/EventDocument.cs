using System.Text;
using System.Text.Json;
using MarkReader.Application.Advising;
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
    /// Reads an event that was sent: JSON of its own, so that nothing else can come in with it. "photo" and "mark" (number in the photo's marks, from 0) in place of
    /// u, v and their uncertainty are filled in from what was last measured in the photo.
    /// </summary>
    public static Outcome<EventDocument> Read(ReadOnlyMemory<byte> bytes, PhotoStore photos)
    {
        using JsonDocument? document = JsonText.Parse(bytes, new() { MaxDepth = 4 }, out string unreadable);
        if (document is null)
            return Unreadable($"the event {unreadable}");
        if (document.RootElement.ValueKind != JsonValueKind.Object)
            return Unreadable("the event is not an object");
        JsonFields fields = new(VisitLogFailures.EventUnreadable);
        JsonObject e = new(fields, document.RootElement, "the event");
        if (!e.Has("mark"))
            return new EventDocument(Encoding.UTF8.GetString(JsonText.WithoutMark(bytes).Span), null);
        double number = e.Number("mark");
        string photo = e.Text("photo");
        if (fields.Wrong is { } wrong)
            return wrong;
        if (s_measured.FirstOrDefault(e.Has) is { } twice)
            return new Failure(VisitLogFailures.EventUnreadable, $"the event has both 'mark' and '{twice}'", "give photo and mark, or u, v and their uncertainty");
        return Find(photos, photo, number).TryGet(out MarkReport? mark, out Failure? failure) ? new EventDocument(Fill(document.RootElement, mark), photo) : failure;
    }

    private static Outcome<MarkReport> Find(PhotoStore photos, string photo, double number)
    {
        if (!photos.FindMeasurement(photo).TryGet(out KeptMeasurement? measurement, out Failure? failure))
            return failure;
        if (measurement.Answer is KeptAnswer.Refusal refusal)
            return refusal.Failure;
        IReadOnlyList<MarkReport> marks = JsonSerializer.Deserialize<MeasureReport>(((KeptAnswer.Report)measurement.Answer).Json, ReportJson.Options)!.Marks;
        for (int i = 0; i < marks.Count; i++)
        {
            if (i == number)
                return marks[i];
        }

        return new Failure(VisitLogFailures.PhotoMarkUnknown, $"the photo has {marks.Count} marks and none of this number", "count them from 0, as measure sorts them: by u");
    }

    private static string Fill(JsonElement e, MarkReport mark)
    {
        using MemoryStream text = new();
        using (Utf8JsonWriter writer = new(text, new() { Encoder = ReportJson.Options.Encoder }))
        {
            writer.WriteStartObject();
            foreach (JsonProperty field in e.EnumerateObject())
                field.WriteTo(writer);
            writer.WriteNumber("u", mark.U);
            writer.WriteNumber("v", mark.V);
            writer.WritePropertyName("covariance");
            JsonSerializer.Serialize(writer, mark.Covariance);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(text.ToArray());
    }

    private static Failure Unreadable(string what) => new(VisitLogFailures.EventUnreadable, what, "send one event as a visit file has it: {\"kind\": \"mark\", …}; the README shows them");
}
