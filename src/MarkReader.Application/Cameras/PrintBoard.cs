using MarkReader.Cards;
using MarkReader.Drawing.Cards;

namespace MarkReader.Application.Cameras;

/// <summary>The calibration board as a page to print.</summary>
public static class PrintBoard
{
    /// <summary>The bytes of a PDF.</summary>
    public static byte[] Pdf(Paper paper) => BoardSheet.Write(CalibrationBoard.Sheet, paper, CameraTexts.Get("board.note1"), CameraTexts.Get("board.note2"));
}
