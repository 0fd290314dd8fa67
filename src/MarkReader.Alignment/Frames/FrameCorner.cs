namespace MarkReader.Alignment.Frames;

/// <summary>A corner of a mirror's frame, as seen facing its knobs.</summary>
public enum FrameCorner
{
    LowerLeft,
    LowerRight,
    UpperLeft,
    UpperRight,
}
