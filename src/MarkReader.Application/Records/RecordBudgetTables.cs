using System.Globalization;
using MarkReader.Application.Reports;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The uncertainty budgets of a record: that of the marks, then one table a leg, as found beside as left.</summary>
internal sealed class RecordBudgetTables(VisitRecord record, RecordFormat format)
{
    private static readonly string s_none = RecordTexts.Get("None");

    public IEnumerable<DocumentBlock> Blocks()
    {
        foreach (RecordBudget marks in record.Budgets.Where(b => b.Leg is null))
            yield return Table(RecordTexts.Say("BudgetMarks", Count(marks.Points)), [("ColumnUncertainty", marks)]);
        IGrouping<string, RecordBudget>[] legs = [.. record.Budgets.Where(b => b.Leg is not null).GroupBy(b => b.Leg!)];
        foreach (IGrouping<string, RecordBudget> leg in legs)
            yield return Aim(leg.Key, At(leg, RecordMoment.Found), At(leg, RecordMoment.Left));
        string[] most = [.. legs.Select(l => At(l, RecordMoment.Left)).OfType<RecordBudget>().Select(Most)];
        if (most.Length > 0)
            yield return Small(RecordTexts.Say("BudgetMost", string.Join("; ", most)));
        if (legs.Length > 0)
            yield return Small(RecordTexts.Get("BudgetAimNote"));
        if (record.Budgets.All(b => b.Leg is not null))
            yield return Small(RecordTexts.Get(record.Events.Any(e => e.Source.Photo is not null) ? "BudgetPhotosElsewhere" : "BudgetNone"));
        if (record.Budgets.Count > 0)
            yield return Small(RecordTexts.Say("BudgetNote", format.WithUnit(record.Setup.PulseScatter.Millimetres, 3)));
    }

    private DocumentBlock.Table Aim(string leg, RecordBudget? found, RecordBudget? left)
    {
        string caption = (found, left) switch
        {
            ({ } f, { } l) => RecordTexts.Say("BudgetAim", leg, Count(f.Points), Count(l.Points)),
            ({ } f, _) => RecordTexts.Say("BudgetAimFound", leg, Count(f.Points)),
            _ => RecordTexts.Say("BudgetAimLeft", leg, Count(left!.Points)),
        };
        return Table(caption, [.. ((string, RecordBudget?)[])[("ColumnFound", found), ("ColumnLeft", left)]]);
    }

    private DocumentBlock.Table Table(string caption, (string Heading, RecordBudget? Budget)[] given)
    {
        (string Heading, RecordBudget Budget)[] columns = [.. given.Where(c => c.Budget is not null).Select(c => (c.Heading, c.Budget!))];
        IReadOnlyList<ComponentReport>[] parts = [.. columns.Select(c => ComponentReport.From(c.Budget.Components))];
        string[] sources = [.. columns.SelectMany(c => c.Budget.Components).Select(c => c.Source).Distinct().Order().Select(ComponentReport.Name)];
        bool ofAim = columns[0].Budget.Leg is not null;
        string[] Cells(IReadOnlyList<ComponentReport> budget, string source) => budget.FirstOrDefault(p => p.Source == source) is { } part
            ? [format.Length(part.StandardUncertainty, 4), format.Number(100 * part.Share, 0)]
            : [s_none, s_none];
        return new(
            caption,
            [
                new(RecordTexts.Get("ColumnSource"), Wraps: true),
                .. columns.SelectMany(c => (TableColumn[])[new(RecordTexts.Get(c.Heading), format.UnitName, IsNumber: true), new(RecordTexts.Get("ColumnShare"), "%", IsNumber: true)]),
            ],
            [
                .. sources.Select(source => new TableRow([Words(source, ofAim), .. parts.SelectMany(p => Cells(p, source))])),
                new TableRow([RecordTexts.Get("BudgetTotal"), .. columns.SelectMany(c => (string[])[format.Length(Whole(c.Budget), 4), format.Number(100, 0)])]),
            ]);
    }

    // What of it is largest.
    private string Most(RecordBudget budget)
    {
        ComponentReport most = ComponentReport.From(budget.Components).MaxBy(p => p.Share)!;
        return RecordTexts.Say("BudgetMostLeg", budget.Leg!, Words(most.Source, ofAim: true), format.Number(100 * most.Share, 0));
    }

    // In an aim point's budget the noise of the marks holds the scatter of the pulses as well.
    private static string Words(string source, bool ofAim) =>
        ofAim && source == ComponentReport.Name(UncertaintySource.Noise) ? RecordTexts.Get("source.noise") : ComponentReport.Words(source);

    private static double Whole(RecordBudget budget)
    {
        Covariance2 sum = budget.Components.Select(c => c.Covariance).Aggregate((a, b) => a + b);
        return Math.Sqrt((sum.Uu + sum.Vv) / 2);
    }

    private static RecordBudget? At(IEnumerable<RecordBudget> leg, RecordMoment moment) => leg.FirstOrDefault(b => b.Moment == moment);

    private static DocumentBlock.Paragraph Small(string text) => new(text, Small: true);

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
