namespace MarkReader.Cameras.Calibration;

/// <summary>What a calibration leaves free beside focal length and principal point.</summary>
[Flags]
public enum CameraTerms
{
    None = 0,
    K1 = 1,
    K2 = 2,
    K3 = 4,

    /// <summary>p1 and p2: the lens is not centred on its axis.</summary>
    Decentring = 8,

    /// <summary>Focal lengths along x and y differ.</summary>
    Aspect = 16,

    /// <summary>The print is stretched along u against v.</summary>
    Stretch = 32,

    /// <summary>The board is bent.</summary>
    Bend = 64,

    /// <summary>Black areas of the print have grown.</summary>
    Spread = 128,

    /// <summary>The print's u and v are not square to each other; for a card only.</summary>
    Skew = 256,

    /// <summary>Lens terms of every order.</summary>
    Lens = K1 | K2 | K3 | Decentring,

    All = Lens | Aspect | Stretch | Bend | Spread,
}
