using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Cards;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Tests.Support;

namespace MarkReader.Drawing.Tests.Cards;

public sealed partial class PdfSheetTests
{
    public static TheoryData<string, string> Sheets { get; } = new(CardKinds.All.SelectMany(k => Paper.All.Select(p => (k.Name, p.Name))));

    [Theory]
    [InlineData("a4", 210, 297)]
    [InlineData("letter", 215.9, 279.4)]
    public void The_page_is_exactly_the_paper(string paper, double width, double height)
    {
        string info = Poppler.Info(CardSheet.Write(CardKinds.All[0], CardFormat.Pdf, Paper.Find(paper).ValueOrThrow()));

        Match size = PageSize().Match(info);
        Assert.True(size.Success, info);
        Assert.Equal(width, double.Parse(size.Groups[1].Value, CultureInfo.InvariantCulture) * 25.4 / 72, 0.001);
        Assert.Equal(height, double.Parse(size.Groups[2].Value, CultureInfo.InvariantCulture) * 25.4 / 72, 0.001);
        Assert.Contains("Pages:           1", info, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_cards_rulers_are_right_both_ways(string kindName, string paperName)
    {
        (CardKind kind, SheetLayout layout, byte[] pdf) = Sheet(kindName, paperName);
        Assert.Equal(2, kind.Rulers.Count);
        foreach (CardRuler ruler in kind.Rulers)
        {
            double length = ruler.From.DistanceTo(ruler.To);
            bool across = ruler.From.V == ruler.To.V;
            (double x, double y) = (layout.CardX + ruler.From.U, layout.CardY - (across ? ruler.From.V : ruler.To.V));
            Assert.Equal(length, Measured(pdf, x, y, length, across), 0.05);
        }
    }

    [Fact]
    public void The_pages_long_rulers_are_right_both_ways()
    {
        (_, SheetLayout layout, byte[] pdf) = Sheet("plate", "a4");
        (double left, double top) = layout.Scale!.Value;

        Assert.Equal(100, Measured(pdf, left, top + 99.9, 100, across: true), 0.05);
        Assert.Equal(100, Measured(pdf, left + 0.1, top, 100, across: false), 0.05);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_marker_stands_where_the_kind_says(string kindName, string paperName)
    {
        (CardKind kind, SheetLayout layout, byte[] pdf) = Sheet(kindName, paperName);
        double half = kind.OuterSide / 2;
        GreyPicture card = Poppler.Render(pdf, (layout.CardX - half, layout.CardY - half, kind.OuterSide, kind.OuterSide));
        foreach (CardMarker marker in kind.Markers)
        {
            // Across the black border's uppermost cell row, and down its leftmost cell column.
            double cell = marker.Side / marker.Pattern.CellsWithBorder;
            int row = (int)((half - marker.Centre.V - (marker.Side / 2) + (cell / 2)) * Poppler.PixelsPerMm);
            int column = (int)((half + marker.Centre.U - (marker.Side / 2) + (cell / 2)) * Poppler.PixelsPerMm);
            (double left, double right) = Ends(x => card.Ink(x, row), (half + marker.Centre.U) * Poppler.PixelsPerMm);
            (double top, double bottom) = Ends(y => card.Ink(column, y), (half - marker.Centre.V) * Poppler.PixelsPerMm);
            Assert.Equal(half + marker.Centre.U - (marker.Side / 2), left / Poppler.PixelsPerMm, 0.02);
            Assert.Equal(half + marker.Centre.U + (marker.Side / 2), right / Poppler.PixelsPerMm, 0.02);
            Assert.Equal(half - marker.Centre.V - (marker.Side / 2), top / Poppler.PixelsPerMm, 0.02);
            Assert.Equal(half - marker.Centre.V + (marker.Side / 2), bottom / Poppler.PixelsPerMm, 0.02);
        }
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_page_says_what_to_do_and_what_to_beware_of(string kindName, string paperName)
    {
        (CardKind kind, _, byte[] pdf) = Sheet(kindName, paperName);
        string text = Regex.Replace(Poppler.Text(pdf), @"\s+", " ");

        Assert.Contains(kind.Name, text, StringComparison.Ordinal);
        Assert.Contains(kind.Purpose, text, StringComparison.Ordinal);
        Assert.Contains("100 %", text, StringComparison.Ordinal);
        Assert.Contains("steel rule", text, StringComparison.Ordinal);
        Assert.Contains("arrow up", text, StringComparison.Ordinal);
        Assert.Contains("10.6 µm", text, StringComparison.Ordinal);
        Assert.Contains("EN 207", text, StringComparison.Ordinal);
        Assert.Contains("maker's manual", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_margins_of_the_page_are_blank(string kindName, string paperName)
    {
        (_, _, byte[] pdf) = Sheet(kindName, paperName);
        Paper paper = Paper.Find(paperName).ValueOrThrow();
        (double width, double height) = (paper.Width.Millimetres, paper.Height.Millimetres);

        GreyPicture page = Poppler.Render(pdf, (0, 0, width, height), 10);
        const int margin = 100;
        for (int y = 0; y < page.Height; y++)
        {
            bool foot = y < margin || y >= page.Height - margin;
            Assert.Equal(0, page.RowInk(y, 0, foot ? page.Width : margin));
            Assert.Equal(0, page.RowInk(y, page.Width - margin, page.Width));
        }
    }

    [Fact]
    public void The_same_card_gives_the_same_bytes()
    {
        Assert.Equal(Sheet("plate", "a4").Pdf, Sheet("plate", "a4").Pdf);
        Assert.NotEqual(Sheet("plate", "a4").Pdf, Sheet("plate", "letter").Pdf);
    }

    private static (CardKind Kind, SheetLayout Layout, byte[] Pdf) Sheet(string kindName, string paperName)
    {
        CardKind kind = CardKinds.Find(kindName)!;
        Paper paper = Paper.Find(paperName).ValueOrThrow();
        return (kind, SheetLayout.Of(kind, paper), CardSheet.Write(kind, CardFormat.Pdf, paper));
    }

    /// <summary>Length of the straight ink through a point, in mm, looked for 5 mm beyond both ends.</summary>
    private static double Measured(byte[] pdf, double x, double y, double length, bool across)
    {
        const double beyond = 5;
        GreyPicture strip = across
            ? Poppler.Render(pdf, (x - beyond, y - 0.02, length + (2 * beyond), 0.04))
            : Poppler.Render(pdf, (x - 0.02, y - beyond, 0.04, length + (2 * beyond)));
        Func<int, double> ink = across ? i => strip.Ink(i, 0) : i => strip.Ink(0, i);
        (double from, double to) = Ends(ink, (beyond + (length / 2)) * Poppler.PixelsPerMm);
        return (to - from) / Poppler.PixelsPerMm;
    }

    /// <summary>The ends of the ink that holds a middle, walking outwards until a pixel is white; part-inked end pixels count in part.</summary>
    private static (double From, double To) Ends(Func<int, double> ink, double middle)
    {
        int low = (int)middle;
        int high = low;
        Assert.Equal(1, ink(low), 0.01);
        while (ink(low - 1) > 0.99)
            low--;
        while (ink(high + 1) > 0.99)
            high++;
        return (low - ink(low - 1), high + 1 + ink(high + 1));
    }

    [GeneratedRegex(@"Page size:\s+([\d.]+) x ([\d.]+) pts")]
    private static partial Regex PageSize();
}
