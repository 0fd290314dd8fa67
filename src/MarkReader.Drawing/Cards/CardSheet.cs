using MarkReader.Cards;

namespace MarkReader.Drawing.Cards;

/// <summary>Writes a card to be printed.</summary>
/// <remarks>The same card gives the same bytes. The whole file is made in memory: Skia ends the process when a PDF goes to a stream that cannot seek.</remarks>
public static class CardSheet
{
    /// <summary>The bytes of the file.</summary>
    /// <param name="paper">The page of a PDF; the other formats are the card alone, cut at its outline.</param>
    public static byte[] Write(CardKind kind, CardFormat format, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(kind);
        ArgumentNullException.ThrowIfNull(format);
        ArgumentNullException.ThrowIfNull(paper);
        return format == CardFormat.Pdf ? PdfSheet.Write(kind, paper)
            : format == CardFormat.Svg ? SvgCard.Write(kind)
            : PngCard.Write(kind);
    }
}
