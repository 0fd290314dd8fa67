using MarkReader.Cards;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Tests.Support;

namespace MarkReader.Drawing.Tests.Cards;

public sealed class BoardSheetTests
{
    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void Every_marker_stands_where_the_board_says(string name)
    {
        CalibrationBoard board = CalibrationBoard.Sheet;
        Paper paper = Paper.Find(name).ValueOrThrow();
        byte[] pdf = BoardSheet.Write(board, paper, "First line.", "Second line.");
        double left = (paper.Width.Millimetres - board.Width) / 2;
        GreyPicture page = Poppler.Render(pdf, (left, SheetLayout.FootMargin, board.Width, board.Height));

        foreach (CardMarker marker in board.Markers)
        {
            // Along the black border's uppermost row of cells.
            double cell = marker.Side / marker.Pattern.CellsWithBorder;
            int row = (int)(((board.Height / 2) - marker.Centre.V - (marker.Side / 2) + (cell / 2)) * Poppler.PixelsPerMm);
            double middle = ((board.Width / 2) + marker.Centre.U) * Poppler.PixelsPerMm;
            double from = middle, to = middle;
            while (page.Ink((int)from, row) > 0.5)
                from--;
            while (page.Ink((int)to, row) > 0.5)
                to++;
            Assert.Equal(marker.Side, (to - from - 1) / Poppler.PixelsPerMm, 0.1);
            Assert.Equal((board.Width / 2) + marker.Centre.U, ((from + to) / 2) / Poppler.PixelsPerMm, 0.06);
        }
    }

    [Fact]
    public void The_same_board_gives_the_same_bytes() =>
        Assert.Equal(BoardSheet.Write(CalibrationBoard.Sheet, Paper.A4, "x"), BoardSheet.Write(CalibrationBoard.Sheet, Paper.A4, "x"));
}
