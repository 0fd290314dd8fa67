using System.Text;
using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Tests.Advising;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Records;

public sealed class VisitRecordTests(RecordedVisit visit) : IClassFixture<RecordedVisit>
{
    [Fact]
    public void The_numbers_of_the_json_are_those_that_advise_gives()
    {
        JsonElement json = JsonDocument.Parse(RecordReport.Write(visit.Record)).RootElement;
        VisitAdvice advice = AdviseVisit.Run(Encoding.UTF8.GetBytes(visit.Kept.File())).ValueOrThrow();
        Assert.True(JsonElement.DeepEquals(JsonSerializer.SerializeToElement(VisitReport.From(advice), ReportJson.Options), json.GetProperty("advice")));
        Assert.Equal("within", json.GetProperty("advice").GetProperty("state").GetProperty("machine").GetProperty("verdict").GetString());

        JsonElement[] steps = [.. json.GetProperty("steps").EnumerateArray()];
        Assert.Equal(["legSpread", "legSpread", "bedSpread", "centring"], steps.Select(s => s.GetProperty("quantity").GetString()));
        Assert.Equal(advice.State.Legs["1"].Slope!.U, steps[0].GetProperty("left").GetProperty("slope").GetProperty("u").GetDouble());
        Assert.Equal(0.4 * advice.State.Legs["1"].Slope!.Magnitude, steps[0].GetProperty("left").GetProperty("size").GetDouble(), 12);
        Assert.Equal(advice.State.Survey!.Greatest!.Value.Millimetres, steps[2].GetProperty("left").GetProperty("size").GetDouble(), 12);
        Assert.Equal(advice.State.Centring!.Offset!.Vector.Magnitude, steps[3].GetProperty("left").GetProperty("size").GetDouble(), 12);
        Assert.Equal(visit.Kept.All.Count, json.GetProperty("events").GetArrayLength());
        Assert.Equal("A. Turner", json.GetProperty("visit").GetProperty("doneBy").GetString());
    }

    [Fact]
    public void As_found_is_what_advise_said_before_the_first_turn()
    {
        foreach ((string leg, RecordStep step) in visit.Record.Steps.Take(2).Select(s => (s.Leg!, s)))
        {
            string[] before = [.. visit.Kept.Events.Select(e => e.Text).TakeWhile(t => !(t.Contains("\"turn\"", StringComparison.Ordinal) && t.Contains($"\"leg\":\"{leg}\"", StringComparison.Ordinal)))];
            VisitAdvice advice = VisitTexts.Advise(VisitTexts.Visit(visit.Kept.Machine, before)).ValueOrThrow();
            Assert.Equal(advice.State.Legs[leg].Slope, step.Found!.Slope);
            Assert.NotEqual(advice.State.Legs[leg].Slope, step.Left.Slope);
        }
    }

    [Fact]
    public void A_mark_from_a_photo_has_its_diameter_its_photo_and_a_budget()
    {
        VisitRecord record = visit.Record;
        Assert.True(record.Photos.Count >= 3);
        Assert.Equal(0, record.PhotosMissing);
        RecordMark first = record.Marks[0];
        Assert.Equal(1, first.Photo);
        Assert.InRange(first.Diameter!.Value, 0.5, 6);
        RecordBudget mean = Assert.Single(record.Budgets, b => b.Leg is null);
        Assert.Equal(record.Photos.Count, mean.Points);
        // What the photo tells of the mark, without the scatter of the pulses that the event has besides.
        Assert.InRange(mean.Components.Sum(c => c.Covariance.Uu), 1e-8, first.At.Covariance.Uu);
        // The aim point's budget is of the same size as what the filter states for it.
        RecordBudget aim = record.Budgets.Single(b => b is { Leg: "1", Moment: RecordMoment.Found });
        Assert.Contains(aim.Components, c => c.Source == UncertaintySource.PathLengths);
        Assert.InRange(aim.Components.Sum(c => c.Covariance.Uu) / record.Steps[0].Found!.Aim!.Covariance.Uu, 0.5, 2);
    }

    [Fact]
    public void Each_legs_aim_point_has_a_budget_as_left_no_smaller_than_what_turned_since_has_added()
    {
        foreach (string leg in (string[])["1", "2"])
        {
            RecordBudget left = visit.Record.Budgets.Single(b => b.Leg == leg && b.Moment == RecordMoment.Left);
            RecordStep step = visit.Record.Steps.Single(s => s.Leg == leg);
            Covariance2 sum = left.Components.Select(c => c.Covariance).Aggregate((a, b) => a + b), stated = step.Left.Aim!.Covariance;
            // The filter uses every mark: what it states is no larger.
            Assert.InRange((stated.Uu + stated.Vv) / (sum.Uu + sum.Vv), 0.2, 1 + 1e-9);
        }
    }

    [Fact]
    public void A_caption_names_the_newest_marks_only()
    {
        string html = Encoding.UTF8.GetString(RecordHtml.Write(visit.Record, RecordFormat.Plain));
        string[] captions = [.. html.Split("<figcaption>").Skip(1).Select(c => c[..c.IndexOf("</figcaption>", StringComparison.Ordinal)]).Where(c => c.Contains("Aim point:", StringComparison.Ordinal))];
        Assert.Contains(captions, c => c.Contains("see Marks", StringComparison.Ordinal));
        Assert.All(captions, c => Assert.InRange(c.Split("Mark ").Length - 1, 1, 4));
    }

    [Fact]
    public void The_event_that_was_taken_back_is_in_the_record_and_counts_nowhere()
    {
        RecordEvent gone = Assert.Single(visit.Record.Events, e => e.IsTakenBack);
        Assert.Equal("=wrong tape", gone.Note);
        Assert.Equal(gone.Number, visit.Record.Marks.Single(m => m.Number == gone.Mark).Of.Number);
    }

    [Fact]
    public void A_step_that_was_skipped_stands_there_with_its_reason_and_undecided()
    {
        string file = VisitTexts.Visit(
            VisitTexts.Machine,
            """{ "kind": "skip", "step": "1", "reason": "cover riveted" }""",
            """{ "kind": "mark", "leg": "2", "path": 60, "u": 0.4, "v": 0.2, "uncertainty": 0.05, "time": "2026-11-26T09:00:00Z" }""");
        VisitRecord record = RecordMaker.Make(RecordSource.Read(Encoding.UTF8.GetBytes(file)).ValueOrThrow(), new NoRecordPhotos(), DateTimeOffset.UnixEpoch).ValueOrThrow();
        Assert.Equal("cover riveted", record.Steps[0].Skipped);
        string html = Encoding.UTF8.GetString(RecordHtml.Write(record, RecordFormat.Plain));
        Assert.Contains("Leg 1 skipped: cover riveted", html, StringComparison.Ordinal);
        Assert.Contains("(skipped: cover riveted)", html, StringComparison.Ordinal);
        Assert.Contains("Undecided", html, StringComparison.Ordinal);
        Assert.Contains(">unmeasured</td>", html, StringComparison.Ordinal);
        Assert.Contains("09:00:00", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Photos_are_small_and_say_nothing_of_the_place_where_they_were_taken()
    {
        byte[] photo = visit.Photos.Read(visit.Record.Photos[0].Id).ValueOrThrow().Bytes;
        byte[] exif = [0xFF, 0xE1, 0, 22, .. "Exif\0\0GPS-47.1-8.2.."u8];
        byte[] tagged = [.. photo[..2], .. exif, .. photo[2..]];
        VisitRecord record = RecordMaker.Make(
            new(visit.Kept.Machine, [new("""{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""", "a", null, null)]), new OnePhoto(tagged), DateTimeOffset.UnixEpoch).ValueOrThrow();
        Assert.Contains("GPS-47", Encoding.Latin1.GetString(tagged), StringComparison.Ordinal);
        foreach (RecordPhoto small in (IEnumerable<RecordPhoto>)[.. record.Photos, .. visit.Record.Photos])
        {
            Assert.InRange(Math.Max(small.Size.Width, small.Size.Height), 200, 1600);
            Assert.InRange(small.Jpeg.Length, 1000, 250 * 1024);
            Assert.DoesNotContain("GPS-47", Encoding.Latin1.GetString(small.Jpeg), StringComparison.Ordinal);
            Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(small.Jpeg), StringComparison.Ordinal);
        }

        Assert.False(record.Photos[0].IsCut);
    }

    [Fact]
    public void The_table_of_the_csv_reads_back_and_no_cell_is_a_formula()
    {
        List<string[]> rows = CsvRows.Read(Encoding.UTF8.GetString(RecordCsv.Write(visit.Record)));
        Assert.Equal(visit.Record.Events.Count + 1, rows.Count);
        Assert.All(rows, r => Assert.Equal(RecordCsv.Columns.Count, r.Length));
        int Column(string name) => RecordCsv.Columns.ToList().IndexOf(name);
        foreach (RecordMark mark in visit.Record.Marks)
        {
            string[] row = rows[mark.Of.Number];
            Assert.Equal(mark.At.Point.U, double.Parse(row[Column("u (mm)")], System.Globalization.CultureInfo.InvariantCulture));
            Assert.Equal(mark.At.Covariance.Uv, double.Parse(row[Column("covariance uv (mm2)")], System.Globalization.CultureInfo.InvariantCulture));
        }

        Assert.All(rows.SelectMany(r => r), cell => Assert.True(
            cell.Length == 0 || !"=+@\t\r".Contains(cell[0], StringComparison.Ordinal) && (cell[0] != '-' || double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out _)), cell));
        Assert.Contains(rows, r => r[Column("note")] == "'=wrong tape");
    }

    private sealed class OnePhoto(byte[] bytes) : IRecordPhotos
    {
        public MeasureReport? Measured(string id) => null;

        public ReadOnlyMemory<byte>? Bytes(string id) => bytes;
    }
}
