using MarkReader.Cards;

namespace MarkReader.Drawing.Cards;

/// <summary>Where the parts of a card's page stand: mm from the page's upper left corner, x right, y down.</summary>
/// <param name="CardX">The card's centre.</param>
/// <param name="CardY">The card's centre.</param>
/// <param name="Steps">What to do with the card.</param>
/// <param name="Cautions">What to beware of; null when it follows the steps in their column.</param>
/// <param name="Scale">Upper left corner of a pair of long rulers, for a card whose own are short; null when the card's own will do.</param>
public sealed record SheetLayout(double CardX, double CardY, TextColumn Steps, TextColumn? Cautions, (double X, double Y)? Scale)
{
    /// <summary>White border of the page at the sides, more than printers need.</summary>
    public const double Margin = 15;

    /// <summary>White border at the foot.</summary>
    public const double FootMargin = 10;

    /// <summary>Length of the page's rulers.</summary>
    public const double ScaleLength = 100;

    /// <summary>Where the line under the heading stands.</summary>
    internal const double HeadingEnd = 31;

    private const double CropMarks = 6; // room for the crop marks outside the card
    private const double Gutter = 8;
    private const double NarrowestColumn = 90;

    public static SheetLayout Of(CardKind kind, Paper paper)
    {
        double side = kind.OuterSide;
        double width = paper.Width.Millimetres;
        double top = HeadingEnd + CropMarks + 1;
        double beside = Margin + CropMarks + side + CropMarks + Gutter;
        double column = width - Margin - beside;
        if (column >= NarrowestColumn)
        {
            double foot = paper.Height.Millimetres - Margin;
            return new(Margin + CropMarks + (side / 2), top + (side / 2), new(beside, top, column, 3.3), null, (Margin, foot - ScaleLength));
        }

        double texts = top + side + CropMarks + 2;
        column = (width - (2 * Margin) - Gutter) / 2;
        return new(width / 2, top + (side / 2), new(Margin, texts, column, 3), new(Margin + column + Gutter, texts, column, 3), null);
    }
}

/// <summary>A column of text: its upper left corner, its width and the size of its letters, mm.</summary>
public sealed record TextColumn(double X, double Y, double Width, double TextSize);
