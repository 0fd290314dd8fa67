using System.Globalization;
using MarkReader.Alignment.History;
using MarkReader.Application.Records;
using MarkReader.Application.Texts;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.History;

/// <summary>A machine's history in words and charts.</summary>
public sealed class HistoryWords(RecordFormat format)
{
    private const int Decimals = 2;

    /// <summary>Such as "Leg 2: slope".</summary>
    public static string Title(HistoryQuantity quantity) => HistoryTexts.Say("title." + quantity.Kind, quantity.Leg ?? "");

    /// <summary>What the history of a quantity shows, in one plain sentence or two.</summary>
    public string Sentence(QuantityHistory history)
    {
        string name = HistoryTexts.Say("name." + history.Quantity.Kind, history.Quantity.Leg ?? "");
        string Size(double value) => Value(history.Quantity, value);
        string visits = history.Points.Count.ToString(CultureInfo.InvariantCulture);
        if (history.Finding is not { } finding)
        {
            HistoryPoint last = history.Points[^1];
            HistoryValue value = (last.State.Left ?? last.State.Found)!;
            return HistoryTexts.Say("shown", name, Size(value.Magnitude), visits, Size(HistoryState.Expanded(value)));
        }

        return finding.Verdict switch
        {
            HistoryVerdict.TooFew => HistoryTexts.Say("verdict.TooFew", name, HistoryTexts.Get("more." + finding.Missing.ToString(CultureInfo.InvariantCulture))),
            HistoryVerdict.Steady => HistoryTexts.Say("verdict.Steady", name, visits, Size(finding.Rate!.High)),
            HistoryVerdict.Drifting => HistoryTexts.Say("verdict.Drifting", name, Size(finding.Rate!.Value), Bare(history.Quantity, finding.Rate.Low), Bare(history.Quantity, finding.Rate.High)),
            _ => Between("verdict." + finding.Verdict, name, history, finding),
        };
    }

    /// <summary>A value with its unit: mrad, or the reader's unit of length.</summary>
    public string Value(HistoryQuantity quantity, double value) => quantity.IsLength ? format.WithUnit(value, Decimals) : HistoryTexts.Say("mrad", format.Number(value, Decimals));

    /// <summary>A state as tables show it: components and half-length of the 95 % region; "not measured" without one.</summary>
    public string State(HistoryQuantity quantity, HistoryValue? value)
    {
        if (value is null)
            return HistoryTexts.Get("none");
        string expanded = Value(quantity, HistoryState.Expanded(value));
        return quantity.Kind == HistoryKind.Spread
            ? HistoryTexts.Say("size", Bare(quantity, value.Magnitude), expanded)
            : CommaPairs.Apart(HistoryTexts.Say("value", Signed(quantity, value.U), Signed(quantity, value.V), expanded));
    }

    public string Day(DateTimeOffset at) => format.Day(at);

    /// <summary>The day, with the time where another visit of the history was on the same day.</summary>
    public string When(QuantityHistory history, DateTimeOffset at) =>
        history.Points.Count(p => format.Day(p.At) == format.Day(at)) > 1 ? format.Time(at) : format.Day(at);

    /// <summary>The chart of a quantity.</summary>
    public HistoryChart Chart(QuantityHistory history)
    {
        HistoryQuantity quantity = history.Quantity;
        string unit = quantity.IsLength ? format.UnitName : HistoryTexts.Say("mrad", "").Trim();
        HistoryPanel Panel(string name, Func<HistoryValue, HistoryBar> bar) => new(
            HistoryTexts.Get(name), [.. history.Points.Select(p => new HistoryMoment(p.At, p.State.Found is { } found ? bar(found) : null, p.State.Left is { } left ? bar(left) : null))]);
        HistoryPanel[] panels = quantity.Kind == HistoryKind.Spread
            ? [Panel("axis.size", v => new(v.Magnitude, HistoryState.Expanded(v)))]
            : [Panel("axis.u", v => new(v.U, Normal95.Factor * Math.Sqrt(v.Covariance.Uu))), Panel("axis.v", v => new(v.V, Normal95.Factor * Math.Sqrt(v.Covariance.Vv)))];
        return new($"{Title(quantity)}, {unit}", panels, history.Tolerance, quantity.IsLength)
        {
            IsSigned = quantity.Kind != HistoryKind.Spread,
            Date = at => When(history, at),
            Style = new(new(), Numbers),
        };
    }

    /// <summary>All that the chart shows, for those who cannot see it.</summary>
    public string Description(QuantityHistory history) => string.Join(' ',
        history.Points.Select(p => HistoryTexts.Say("chart.point", When(history, p.At), State(history.Quantity, p.State.Found), State(history.Quantity, p.State.Left)))
            .Prepend(HistoryTexts.Say("chart", Title(history.Quantity), Value(history.Quantity, history.Tolerance))));

    private PictureNumbers Numbers => new(
        l => format.WithUnit(l.Millimetres, Decimals),
        l => format.WithUnit(l.Millimetres, Decimals + 1),
        l => format.Short(l.Millimetres),
        n => format.Number(n, Math.Abs(n - Math.Round(n, 1)) < 1e-9 ? Math.Abs(n - Math.Round(n)) < 1e-9 ? 0 : 1 : Decimals),
        format.Unit == RecordUnit.Inch);

    private string Between(string text, string name, QuantityHistory history, HistoryFinding finding)
    {
        HistoryChange change = history.Changes[finding.JumpAt!.Value];
        HistorySize jump = finding.Jump!;
        return HistoryTexts.Say(text, name, Value(history.Quantity, jump.Value), Bare(history.Quantity, jump.Low), Bare(history.Quantity, jump.High), When(history, change.From), When(history, change.To));
    }

    private string Bare(HistoryQuantity quantity, double value) => quantity.IsLength ? format.Length(value, Decimals) : format.Number(value, Decimals);

    private string Signed(HistoryQuantity quantity, double value) => quantity.IsLength ? format.SignedLength(value, Decimals) : format.SignedNumber(value, Decimals);
}
