using MarkReader.Quantities;

namespace MarkReader.Cards;

/// <summary>The board by which a camera is calibrated: markers in rows and columns over a whole page.</summary>
/// <param name="Width">Of the printed part with its white border, mm.</param>
/// <param name="Height">Of the printed part with its white border, mm.</param>
public sealed record CalibrationBoard(
    string Name,
    double Width,
    double Height,
    IReadOnlyList<CardMarker> Markers,
    IReadOnlyList<CardRuler> Rulers,
    IReadOnlyList<CardLabel> Labels) : IPrint
{
    private static readonly Lazy<CalibrationBoard> s_sheet = new(CardData.ReadBoard);

    /// <summary>The board defined in calibration/boards, read from the data built into this assembly.</summary>
    public static CalibrationBoard Sheet => s_sheet.Value;

    /// <summary>What it is for, in a few words.</summary>
    public string Purpose => CardTexts.Get("purpose." + Name);

    public IReadOnlyList<ChessPatch> Patches => [];

    public IReadOnlyList<IReadOnlyList<CardPoint>> Ink => PrintedInk.OfBoard(this);

    /// <summary>The board to which a marker id belongs, or null.</summary>
    public static CalibrationBoard? OfMarker(int id) => Sheet.Markers.Any(m => m.Id == id) ? Sheet : null;
}
