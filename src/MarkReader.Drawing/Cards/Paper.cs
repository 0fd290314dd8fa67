using MarkReader.Drawing.Texts;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Cards;

/// <summary>A sheet of paper, upright.</summary>
public sealed record Paper
{
    private Paper(string name, double width, double height) =>
        (Name, Width, Height) = (name, Length.FromMillimetres(width), Length.FromMillimetres(height));

    /// <summary>The name used on the command line, lower case.</summary>
    public string Name { get; }

    public Length Width { get; }

    public Length Height { get; }

    /// <summary>ISO 216 A4, 210 mm × 297 mm.</summary>
    public static Paper A4 { get; } = new("a4", 210, 297);

    /// <summary>US Letter, 8.5 in × 11 in.</summary>
    public static Paper Letter { get; } = new("letter", 8.5 * 25.4, 11 * 25.4);

    public static IReadOnlyList<Paper> All { get; } = [A4, Letter];

    /// <summary>The paper of this name in upper or lower case.</summary>
    public static Outcome<Paper> Find(string name)
    {
        Paper? paper = All.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase));
        return paper is not null
            ? paper
            : new Failure(DrawingFailures.PaperUnknown, DrawingTexts.Word("paper.thereNoPaperNamed", name), DrawingTexts.Get("paper.useOrLetter"));
    }
}
