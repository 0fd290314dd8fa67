using MarkReader.Application.Inputs;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Documents;
using MarkReader.Drawing.Pictures;
using MarkReader.Metrology.Budgets;

namespace MarkReader.Application.Budgets;

/// <summary>The explained budget of an aim point as a document: how well the point is known on one page, what to do about it and all parts on the next.</summary>
public static class BudgetDocument
{
    /// <summary>The document; null when there is no budget to explain.</summary>
    public static SheetDocument? Of(AimToExplain aim, RecordFormat format)
    {
        AimReport report = aim.Report;
        if (ExplainedBudget.Of(report, format) is not { } words)
            return null;
        List<DocumentBlock> blocks =
        [
            new DocumentBlock.Banner(Tone(words.Sufficiency), BudgetTexts.Say("banner", ExplainedBudget.Fine(format, words.Analysis.Whole)), [words.Enough, words.Known]),
            new DocumentBlock.Paragraph(words.Meaning),
            new DocumentBlock.Paragraph(words.Missing),
            new DocumentBlock.Heading(BudgetTexts.Get("head.dominant")),
            new DocumentBlock.Pictures([new(BudgetTexts.Get("bars.caption"), Bars(words.Analysis, format))]) { Beside = [words.Dominant, words.Adding] },
            new DocumentBlock.NewPage(),
            new DocumentBlock.Heading(BudgetTexts.Get("head.halving")),
            new DocumentBlock.Paragraph(words.Halving),
            new DocumentBlock.Sentences([.. words.Remedies, .. words.Idle is { } idle ? (string[])[idle] : []]),
            new DocumentBlock.Heading(BudgetTexts.Get("head.parts")),
            Parts(words.Analysis, format),
            new DocumentBlock.Paragraph(BudgetTexts.Get("source"), Small: true),
            new DocumentBlock.Paragraph(BudgetTexts.Get("cautions"), Small: true),
        ];
        string subtitle = BudgetTexts.Say("subtitle", aim.Name, format.Time(aim.FoundAt), format.Offset(aim.FoundAt), format.Short(report.Leg.NearPath), format.Short(report.Leg.FarPath));
        return new(BudgetTexts.Get("title"), subtitle, blocks)
        {
            Subject = BudgetTexts.Get("title"),
            Foot = aim.Program == ProgramVersion.Current ? $"MarkReader {aim.Program}" : BudgetTexts.Say("foot.earlier", aim.Program, ProgramVersion.Current),
            Written = aim.FoundAt,
        };
    }

    private static DocumentTone Tone(Sufficiency sufficiency) => sufficiency switch
    {
        Sufficiency.Enough => DocumentTone.Good,
        Sufficiency.Scarce => DocumentTone.Open,
        _ => DocumentTone.Bad,
    };

    private static UncertaintyBars Bars(BudgetAnalysis analysis, RecordFormat format) => new(
        BudgetTexts.Get("bars.title"),
        [.. analysis.Parts.Where(p => p.Share >= 0.001).Select(p => new UncertaintyBar(ExplainedBudget.Name(p.Source), p.Uncertainty, p.Share))],
        analysis.Whole)
    {
        Style = PictureStyle.Default with { Numbers = RecordPictures.Numbers(format) with { Fine = l => ExplainedBudget.Fine(format, l) } },
    };

    private static DocumentBlock.Table Parts(BudgetAnalysis analysis, RecordFormat format) => new(
        "",
        [
            new(BudgetTexts.Get("column.part"), Wraps: true),
            new(BudgetTexts.Get("column.uncertainty"), format.UnitName, IsNumber: true),
            new(BudgetTexts.Get("column.share"), "%", IsNumber: true),
            new(BudgetTexts.Get("column.without"), format.UnitName, IsNumber: true),
        ],
        [
            .. analysis.Parts.Select(p => new TableRow(
                [$"{ExplainedBudget.Name(p.Source)}: {ExplainedBudget.About(p.Source)}", format.Length(p.Uncertainty.Millimetres, 4), ExplainedBudget.Percent(p.Share, format), format.Length(p.WholeWithout.Millimetres, 4)])),
            new TableRow([BudgetTexts.Get("row.whole"), format.Length(analysis.Whole.Millimetres, 4), format.Number(100, 0), "–"]),
        ]);
}

/// <summary>An aim whose uncertainty is explained.</summary>
/// <param name="Name">By which it is found again: see <see cref="Kept"/> and <see cref="Photos"/>.</param>
/// <param name="FoundAt">When it was worked out.</param>
/// <param name="Program">The version of the program that did it.</param>
public sealed record AimToExplain(AimReport Report, string Name, DateTimeOffset FoundAt, string Program)
{
    /// <summary>The name of an aim that is kept.</summary>
    public static string Kept(long id) => BudgetTexts.Say("name.kept", id);

    /// <summary>The name of an aim by its photos' files.</summary>
    public static string Photos(IEnumerable<string> files) => string.Join(", ", files.Select(FileLabel.Shown));
}
