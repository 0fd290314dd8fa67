using MarkReader.Quantities;

namespace MarkReader.Cards;

/// <summary>The geometry of a printed card, in the card frame (mm).</summary>
/// <param name="Name">The name used on the command line.</param>
/// <param name="OuterSide">Side of the square along which the card is cut, centred on the origin.</param>
/// <param name="ZoneSide">Side of the square free zone in the middle, centred on the origin; nothing is printed in it.</param>
/// <param name="ZoneTicks">The ticks that show the zone's corners.</param>
/// <param name="Markers">Square markers around the zone; their ids belong to this kind alone.</param>
/// <param name="Patches">Chessboard patches between the markers.</param>
/// <param name="Rulers">Straight lines of known length for checking the print scale.</param>
/// <param name="Arrow">The arrow that points up.</param>
/// <param name="Labels">Printed words.</param>
public sealed record CardKind(
    string Name,
    double OuterSide,
    double ZoneSide,
    ZoneTicks ZoneTicks,
    IReadOnlyList<CardMarker> Markers,
    IReadOnlyList<ChessPatch> Patches,
    IReadOnlyList<CardRuler> Rulers,
    UpArrow Arrow,
    IReadOnlyList<CardLabel> Labels) : IPrint
{
    /// <summary>What it is taped to, in a few words.</summary>
    public string Purpose => CardTexts.Get("purpose." + Name);

    double IPrint.Width => OuterSide;

    double IPrint.Height => OuterSide;

    IReadOnlyList<IReadOnlyList<CardPoint>> IPrint.Ink => PrintedInk.Polygons(this);
}

/// <summary>A square marker, upright: its id in the dictionary, its centre, and the side of its black border square in mm.</summary>
public sealed record CardMarker(int Id, CardPoint Centre, double Side, MarkerPattern Pattern)
{
    /// <summary>The corners of the black square, clockwise from the marker's own top left.</summary>
    public IReadOnlyList<CardPoint> Corners { get; } =
    [
        new(Centre.U - (Side / 2), Centre.V + (Side / 2)), new(Centre.U + (Side / 2), Centre.V + (Side / 2)),
        new(Centre.U + (Side / 2), Centre.V - (Side / 2)), new(Centre.U - (Side / 2), Centre.V - (Side / 2)),
    ];
}

/// <summary>A block of black and white squares of side <paramref name="Square"/> mm, its upper left corner at <paramref name="UpperLeft"/>.</summary>
/// <param name="FirstBlack">Whether the upper left square is black.</param>
public sealed record ChessPatch(CardPoint UpperLeft, int Columns, int Rows, double Square, bool FirstBlack)
{
    /// <summary>Whether the square in this column (from the left) and row (from the top) is black.</summary>
    public bool IsBlack(int column, int row) => ((column + row) % 2 == 0) == FirstBlack;
}

/// <summary>A right angle of thin lines round each corner of the free zone, just outside it.</summary>
/// <param name="Gap">Distance of the ink from the zone, mm.</param>
/// <param name="Length">Length of each leg, mm.</param>
/// <param name="Stroke">Width of the lines, mm.</param>
public sealed record ZoneTicks(double Gap, double Length, double Stroke);

/// <summary>
/// A ruler: a bar cut square at <paramref name="From"/> and <paramref name="To"/>, so that its length from end to end is the length
/// to be measured; ticks between, and a pointed flag at each end, on the side towards the card's middle.
/// </summary>
/// <param name="Step">Distance between ticks, mm; a tick's centre line stands at its place.</param>
/// <param name="Tick">Length of a tick, from the bar's centre line, mm; the end flags are half as long again.</param>
/// <param name="Stroke">Width of the bar and the ticks, mm.</param>
public sealed record CardRuler(CardPoint From, CardPoint To, double Step, double Tick, double Stroke);

/// <summary>A solid arrow pointing up (+v): its tip, height and width in mm.</summary>
public sealed record UpArrow(CardPoint Tip, double Height, double Width);

/// <summary>A word centred at a point, its cap height in mm, turned by <paramref name="TurnDegrees"/> counter-clockwise.</summary>
public sealed record CardLabel(string Text, CardPoint Centre, double Height, double TurnDegrees);
