namespace MarkReader.Practice.Frames;

/// <summary>A corner of a mirror's frame, as seen facing the knobs.</summary>
public enum FrameCorner
{
    LowerLeft,
    LowerRight,
    UpperLeft,
    UpperRight,
}

/// <summary>Places of the corners about the frame's middle.</summary>
internal static class FrameCorners
{
    /// <summary>−1 or +1 to the right and up.</summary>
    public static (int Right, int Up) Signs(this FrameCorner corner) => corner switch
    {
        FrameCorner.LowerLeft => (-1, -1),
        FrameCorner.LowerRight => (1, -1),
        FrameCorner.UpperLeft => (-1, 1),
        FrameCorner.UpperRight => (1, 1),
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "A frame has four corners."),
    };
}
