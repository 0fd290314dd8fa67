using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Documents;

namespace MarkReader.Application.Records;

/// <summary>A record as PDF.</summary>
public static class RecordPdf
{
    public static byte[] Write(VisitRecord record, RecordFormat format, Paper paper) => PdfDocument.Write(RecordDocument.Of(record, format), paper);
}
