namespace MarkReader.Alignment.Frames;

/// <summary>To which side the mirror turns the beam, as seen from above. It decides only to which side a turn also shifts the beam.</summary>
public enum FoldSide
{
    /// <summary>Not stated: the shift's size is known, its side is not.</summary>
    Unknown,
    Left,
    Right,
}
