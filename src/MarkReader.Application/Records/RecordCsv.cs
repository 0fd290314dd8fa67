using System.Globalization;
using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The events of a visit as a table (RFC 4180): mm, a decimal point, UTC, whatever people read.</summary>
public static class RecordCsv
{
    /// <summary>The columns, with their units.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "event", "time (UTC)", "taken back (UTC)", "kind", "leg", "path (mm)", "gantry (mm)", "x (mm)", "y (mm)", "mark", "u (mm)", "v (mm)", "variance u (mm2)", "covariance uv (mm2)",
        "variance v (mm2)", "diameter (mm)", "photo", "photo SHA-256", "screw", "turns", "corner", "height (mm)", "end", "step", "note",
    ];

    public static byte[] Write(VisitRecord record)
    {
        StringBuilder csv = new();
        Line(csv, Columns);
        Dictionary<int, RecordMark> marks = record.Marks.ToDictionary(m => m.Of.Number);
        foreach (RecordEvent e in record.Events)
            Line(csv, Cells(record, e, marks.GetValueOrDefault(e.Number)));
        return Encoding.UTF8.GetBytes(csv.ToString());
    }

    private static IReadOnlyList<string> Cells(VisitRecord record, RecordEvent e, RecordMark? mark)
    {
        Row row = Row.Of(e.Event);
        MeasuredPoint? at = mark?.At;
        CardVector? move = (e.Event as VisitEvent.MoveTarget)?.By;
        return
        [
            Whole(e.Number), Time(e.Source.At), Time(e.Source.TakenBackAt), row.Kind, Safe(row.Leg), Number(row.Path), Number(row.Gantry), Number(row.X), Number(row.Y), Whole(mark?.Number),
            Number(at?.Point.U ?? move?.U), Number(at?.Point.V ?? move?.V), Number(at?.Covariance.Uu), Number(at?.Covariance.Uv), Number(at?.Covariance.Vv), Number(mark?.Diameter),
            Whole(mark?.Photo), mark?.Photo is { } photo ? record.Photos[photo - 1].Id : "", Safe(row.Screw), Number(row.Turns), row.Corner, Number(row.Height), row.End, row.Step, Safe(row.Reason ?? e.Note),
        ];
    }

    private static void Line(StringBuilder csv, IReadOnlyList<string> cells) => csv.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");

    private static string Quoted(string text) => text.AsSpan().IndexOfAny("\",\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    // A spreadsheet works out what begins like a formula; the apostrophe makes it text.
    private static string Safe(string text) => text.TrimStart() is [('=' or '+' or '-' or '@' or '\t' or '\r' or '|' or '%'), ..] || text is [('\t' or '\r' or '\n'), ..] ? "'" + text : text;

    private static string Whole(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Number(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static string Time(DateTimeOffset? time) => time?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture) ?? "";

    private sealed record Row(string Kind)
    {
        public string Leg { get; private init; } = "";

        public double? Path { get; private init; }

        public double? Gantry { get; private init; }

        public double? X { get; private init; }

        public double? Y { get; private init; }

        public string Screw { get; private init; } = "";

        public double? Turns { get; private init; }

        public string Corner { get; private init; } = "";

        public double? Height { get; private init; }

        public string End { get; private init; } = "";

        public string Step { get; private init; } = "";

        public string? Reason { get; private init; }

        public static Row Of(VisitEvent e) => e switch
        {
            VisitEvent.Mark m => new("mark") { Leg = m.Leg, Path = m.Path, Gantry = m.Gantry?.Millimetres },
            VisitEvent.Survey s => new("survey") { X = s.Seen.X.Millimetres, Y = s.Seen.Y.Millimetres },
            VisitEvent.Turn t => new("turn") { Leg = t.Leg, Screw = t.Screw, Turns = t.Turns },
            VisitEvent.Shim s => new("shim") { Corner = SurveyReport.Name(s.Corner), Height = s.Height.Millimetres },
            VisitEvent.MoveTarget => new("moveTarget"),
            VisitEvent.RaiseTube r => new("raiseTube") { Height = r.Height.Millimetres },
            VisitEvent.Realign r => new("realign") { Leg = r.Leg, End = SurveyReport.Name(r.At) },
            VisitEvent.Disturbed d => new("disturbed") { Leg = d.Leg },
            VisitEvent.Skip s => new("skip") { Step = s.Step.Name(), Reason = s.Reason },
            VisitEvent.Again a => new("again") { Step = a.Step.Name() },
            _ => throw new ArgumentException("Unknown event.", nameof(e)),
        };
    }
}
