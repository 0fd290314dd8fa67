using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>Where a report goes as PDF, checked before anything is measured.</summary>
internal sealed record DocumentOutput(string File, Paper Paper)
{
    /// <summary>Sets <paramref name="output"/> to null when no report is asked for; returns why the name or the paper does not do.</summary>
    public static Failure? Read(string? path, string? paper, out DocumentOutput? output)
    {
        output = null;
        if (path is null)
            return null;
        if (!Paper.Find(paper ?? Paper.A4.Name).TryGet(out Paper? page, out Failure? failure))
            return failure;
        if (!string.Equals(Path.GetExtension(path), ".pdf", StringComparison.OrdinalIgnoreCase))
            return new(CommandLineFailures.OutputNotWritable, OutputTexts.Word("documentOutput.notNamedPdf", path), OutputTexts.Get("documentOutput.nameReportFilePdf"));
        output = new(path, page);
        return OutputFile.Check(path);
    }

    /// <summary>Null when the file is written, else why not.</summary>
    public Failure? Write(SheetDocument document) => OutputFile.Write(File, PdfDocument.Write(document, Paper));
}
