namespace MarkReader.Cameras.Boards;

/// <summary>A kind of photo that a calibration still lacks.</summary>
public enum ViewNeed
{
    /// <summary>From straight above the board.</summary>
    Straight,

    /// <summary>From the board's left, as one reads its label.</summary>
    FromLeft,

    FromRight,

    FromAbove,

    FromBelow,

    /// <summary>With the board turned by a quarter in the picture.</summary>
    Turned,

    /// <summary>With the board reaching into every corner of the picture, one after the other.</summary>
    Corners,

    /// <summary>From nearer or farther than the others.</summary>
    Distance,

    /// <summary>More photos, of whatever kind.</summary>
    More,
}
