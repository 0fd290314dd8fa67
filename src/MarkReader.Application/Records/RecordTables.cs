using System.Globalization;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Verdicts;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The tables of a record.</summary>
internal sealed class RecordTables(VisitRecord record, RecordFormat format)
{
    private const string Mrad = "mrad";

    private static readonly string s_none = RecordTexts.Get("None");

    private readonly bool _photos = record.Marks.Any(m => m.Photo is not null);

    private string Unit => format.UnitName;

    public DocumentBlock.Table Result() => new(
        "",
        [
            Words("ColumnStep", wraps: true), Number("ColumnTolerance", Unit), Number("ColumnFound", Unit), Number("ColumnU95", Unit), Words("ColumnVerdict"),
            Number("ColumnLeft", Unit), Number("ColumnU95", Unit), Words("ColumnVerdict"),
        ],
        [.. record.Steps.Select(step => new TableRow(
        [
            Step(step), format.Length(step.Tolerance.Millimetres, 2), .. State(step.Found), .. State(step.Left),
        ]))]);

    public DocumentBlock.Table? Legs()
    {
        List<TableRow> rows = [];
        foreach (RecordStep step in record.Steps.Where(s => s.Leg is not null))
        {
            foreach ((string name, RecordState? state) in (IEnumerable<(string, RecordState?)>)[("StateFound", step.Found), ("StateLeft", step.Left)])
            {
                if (state is { Slope: { } slope, Aim: { } aim })
                    rows.Add(new([step.Leg!, RecordTexts.Get(name), .. SlopeCells(slope), .. AimCells(aim)]));
            }
        }

        return rows.Count == 0 ? null : new(
            RecordTexts.Get("LegsCaption"),
            [
                Words("ColumnLeg"), Words("ColumnState", wraps: true), Number("ColumnSlopeU", Mrad), Number("ColumnPm", Mrad), Number("ColumnSlopeV", Mrad), Number("ColumnPm", Mrad),
                Number("ColumnAimU", Unit), Number("ColumnPm", Unit), Number("ColumnAimV", Unit), Number("ColumnPm", Unit),
            ],
            rows);
    }

    public DocumentBlock.Table Events()
    {
        bool days = record.Events.Select(e => e.Source.At).OfType<DateTimeOffset>().Select(format.Day).Distinct().Count() > 1;
        bool times = record.Events.Any(e => e.Source.At is not null);
        string Time(DateTimeOffset? at) => at is { } t ? days ? format.Time(t) : format.Clock(t) : s_none;
        return new(
            "",
            [Number("ColumnNumber"), .. times ? [Words("ColumnTime")] : Array.Empty<TableColumn>(), Words("ColumnWhat", wraps: true), .. _photos ? [Number("ColumnPhoto")] : Array.Empty<TableColumn>()],
            [.. record.Events.Select(e => new TableRow(
                [Count(e.Number), .. times ? [Time(e.Source.At)] : Array.Empty<string>(), Said(e, Time), .. _photos ? [e.Photo is { } photo ? Count(photo) : ""] : Array.Empty<string>()],
                e.IsTakenBack))]);
    }

    public string EventsNote() => record.Events.Select(e => e.Source.At).FirstOrDefault(t => t is not null) is { } first
        ? RecordTexts.Say("EventsNote", $"{format.Day(first)}, {format.Offset(first)}")
        : RecordTexts.Get("EventsNoteNoTimes");

    public DocumentBlock.Table Marks() => new(
        "",
        [
            Number("ColumnNumber"), Words("ColumnPlace", wraps: true), Number("ColumnU", Unit), Number("ColumnV", Unit), Number("ColumnUncertaintyU", Unit), Number("ColumnUncertaintyV", Unit),
            .. _photos ? [Number("ColumnDiameter", Unit), Number("ColumnPhoto")] : Array.Empty<TableColumn>(),
        ],
        [.. record.Marks.Select(m => new TableRow(
        [
            Count(m.Number), EventWords.Place(m.Of.Event, format),
            format.SignedLength(m.At.Point.U, 3), format.SignedLength(m.At.Point.V, 3),
            format.Length(Math.Sqrt(m.At.Covariance.Uu), 3), format.Length(Math.Sqrt(m.At.Covariance.Vv), 3),
            .. _photos ? [m.Diameter is { } d ? format.Length(d, 2) : s_none, m.Photo is { } photo ? Count(photo) : s_none] : Array.Empty<string>(),
        ],
        m.Of.IsTakenBack))]);

    private static string Step(RecordStep step)
    {
        string words = RecordTexts.Say(step.Quantity.ToString(), step.Leg ?? "");
        return step.Skipped is { } reason ? RecordTexts.Say("WithNote", words, RecordTexts.Say("Skipped", reason)) : words;
    }

    private string Said(RecordEvent e, Func<DateTimeOffset?, string> time)
    {
        string words = EventWords.Of(e, format);
        return e.Source.TakenBackAt is { } at ? RecordTexts.Say("WithNote", words, RecordTexts.Say("TakenBack", time(at))) : words;
    }

    private string[] State(RecordState? state) => state switch
    {
        null => [s_none, s_none, RecordTexts.Get("Unmeasured")],
        { Value: { } value, Expanded: { } expanded } => [format.Length(value.Vector.Magnitude, 2), format.Length(expanded, 2), RecordTexts.Of(state.Conformity.Verdict)],
        { Conformity.Verdict: Verdict.Undecided } => [s_none, s_none, RecordTexts.Get("Unmeasured")],
        _ => [s_none, s_none, RecordTexts.Of(state.Conformity.Verdict)],
    };

    private string[] SlopeCells(Slope s) =>
    [
        format.SignedNumber(s.U, 2), format.Number(DecisionRule.RegionFactor * Math.Sqrt(s.Covariance.Uu), 2),
        format.SignedNumber(s.V, 2), format.Number(DecisionRule.RegionFactor * Math.Sqrt(s.Covariance.Vv), 2),
    ];

    private string[] AimCells(MeasuredPoint aim) =>
    [
        format.SignedLength(aim.Point.U, 2), format.Length(DecisionRule.RegionFactor * Math.Sqrt(aim.Covariance.Uu), 2),
        format.SignedLength(aim.Point.V, 2), format.Length(DecisionRule.RegionFactor * Math.Sqrt(aim.Covariance.Vv), 2),
    ];

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static TableColumn Words(string name, bool wraps = false) => new(RecordTexts.Get(name), Wraps: wraps);

    private static TableColumn Number(string name, string unit = "") => new(RecordTexts.Get(name), unit, IsNumber: true);
}
