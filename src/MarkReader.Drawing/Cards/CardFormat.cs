using MarkReader.Drawing.Texts;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Cards;

/// <summary>What a card is written as.</summary>
public sealed record CardFormat
{
    private CardFormat(string extension, string mediaType) => (Extension, MediaType) = (extension, mediaType);

    /// <summary>The ending of the file's name, with its dot, lower case.</summary>
    public string Extension { get; }

    public string MediaType { get; }

    /// <summary>A page with the card, vector, at exact size.</summary>
    public static CardFormat Pdf { get; } = new(".pdf", "application/pdf");

    /// <summary>The card alone, vector, with its size in mm.</summary>
    public static CardFormat Svg { get; } = new(".svg", "image/svg+xml");

    /// <summary>The card alone, with its resolution stored.</summary>
    public static CardFormat Png { get; } = new(".png", "image/png");

    public static IReadOnlyList<CardFormat> All { get; } = [Pdf, Svg, Png];

    /// <summary>The format that a file's name asks for by its ending.</summary>
    public static Outcome<CardFormat> OfFile(string fileName)
    {
        string extension = Path.GetExtension(fileName);
        CardFormat? format = All.FirstOrDefault(f => string.Equals(f.Extension, extension, StringComparison.OrdinalIgnoreCase));
        return format is not null
            ? format
            : new Failure(DrawingFailures.CardFormatUnknown, DrawingTexts.Word("cardFormat.cardCannotBeWrittenAs", Path.GetFileName(fileName)), DrawingTexts.Get("cardFormat.nameFilePdfSvgOr"));
    }
}
