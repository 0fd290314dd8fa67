namespace MarkReader.Quantities;

/// <summary>What an uncertainty comes from, in the order in which budgets list them.</summary>
public enum UncertaintySource
{
    /// <summary>Noise of the photo and texture of the tape and the burn.</summary>
    Noise,

    /// <summary>The mark is not as symmetric as its model: level of the outline, light, smoke.</summary>
    MarkShape,

    /// <summary>Place of the printed edges, lens and perspective, as far as the photo determines them.</summary>
    CardView,

    /// <summary>What the fitted view leaves: a card that is not flat, a poor print.</summary>
    Flatness,

    /// <summary>Interpolation between pixels and their response.</summary>
    Interpolation,

    /// <summary>The measured lengths of the printed rulers.</summary>
    PrintScale,

    /// <summary>Height of the tape above the card's plane.</summary>
    Parallax,

    /// <summary>Lengths of the paths.</summary>
    PathLengths,

    /// <summary>The point about which the beam swings.</summary>
    PivotOffset,

    /// <summary>Turns of the screws after the marks: a turn also shifts the beam a little.</summary>
    ScrewTurns,
}
