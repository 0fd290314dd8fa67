using MarkReader.Quantities;

namespace MarkReader.Imaging.Boards;

/// <summary>Why a photo of the board could not be used.</summary>
public static class BoardFailures
{
    public static readonly FailureCode NoBoard = new("NO_BOARD", FailureKind.NotMeasurable);
    public static readonly FailureCode PartlySeen = new("BOARD_PARTLY_SEEN", FailureKind.NotMeasurable);
    public static readonly FailureCode Mirrored = new("BOARD_MIRRORED", FailureKind.BadInput);
}
