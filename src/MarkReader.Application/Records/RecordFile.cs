using MarkReader.Application.Texts;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>A kind of file in which a record is written.</summary>
/// <param name="Extension">Ending of the file's name, with its dot.</param>
/// <param name="MediaType">Its media type.</param>
public sealed record RecordFile(string Extension, string MediaType)
{
    public static RecordFile Pdf { get; } = new(".pdf", "application/pdf");

    public static RecordFile Html { get; } = new(".html", "text/html; charset=utf-8");

    public static RecordFile Csv { get; } = new(".csv", "text/csv; charset=utf-8");

    public static RecordFile Json { get; } = new(".json", "application/json; charset=utf-8");

    private static readonly RecordFile[] s_all = [Pdf, Html, Csv, Json];

    /// <summary>The kind that a file's name says.</summary>
    public static Outcome<RecordFile> Find(string name) => s_all.FirstOrDefault(f => name.EndsWith(f.Extension, StringComparison.OrdinalIgnoreCase)) is { } found
        ? found
        : new Failure(RecordFailures.FormatUnknown, InputTexts.Get("recordFile.nameEndingNoneThatRecord"), InputTexts.Get("recordFile.usePdfHtmlCsvOr"));

    /// <summary>The whole file.</summary>
    /// <param name="format">For people; CSV and JSON do not depend on it.</param>
    /// <param name="paper">Of a PDF.</param>
    public byte[] Write(VisitRecord record, RecordFormat format, Paper paper) => Extension switch
    {
        ".pdf" => RecordPdf.Write(record, format, paper),
        ".html" => RecordHtml.Write(record, format),
        ".csv" => RecordCsv.Write(record),
        _ => RecordReport.Write(record),
    };
}
