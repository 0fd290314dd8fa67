namespace MarkReader.Rendering.Specs;

public enum TapeMaterial
{
    WhitePaper,
    CreamTape,
    BlueTape,
    Cardboard,
    ThermalPaper,
}

/// <summary>A strip laid on the card: centre (mm), length along its direction, width across it; its short ends are torn.</summary>
public sealed record TapeSpec(TapeMaterial Material, double U, double V, double Length, double Width, double TurnDegrees, double Translucency = 0.04);

public enum HoleKind
{
    None,
    Dark,
    BrightMetal,
}

/// <summary>A burn mark, symmetric about (U, V): a charred core with a soft edge and a brown halo.</summary>
/// <param name="U">Centre, mm: the truth.</param>
/// <param name="V">Centre, mm: the truth.</param>
/// <param name="Radius">Radius of the core, mm.</param>
/// <param name="EdgeWidth">Standard deviation of the core's edge, mm.</param>
/// <param name="Density">Optical density (natural logarithm) of the core in green.</param>
/// <param name="HaloRadius">Radius at which the halo has fallen to 1/e, mm.</param>
/// <param name="HaloDensity">Optical density of the halo at the core, in green.</param>
public sealed record BurnSpec(
    double U, double V, double Radius = 1.2, double EdgeWidth = 0.12, double Density = 2.6, double HaloRadius = 1.9, double HaloDensity = 0.5)
{
    /// <summary>What the truth file calls it.</summary>
    public string Kind { get; init; } = "burn";

    /// <summary>0: a scorch, brown; 1: char, all channels nearly alike.</summary>
    public double Charring { get; init; } = 1;

    /// <summary>Minor over major axis.</summary>
    public double AxisRatio { get; init; } = 1;

    /// <summary>Direction of the major axis, from u towards v.</summary>
    public double AxisDegrees { get; init; }

    /// <summary>How much of the core's density is missing in its middle, 0 to 1.</summary>
    public double RingDepth { get; init; }

    /// <summary>Radius of the paler middle over the core's radius.</summary>
    public double RingRadius { get; init; } = 0.5;

    public HoleKind Hole { get; init; }

    /// <summary>Radius of the hole over the core's radius.</summary>
    public double HoleRadius { get; init; } = 0.6;

    /// <summary>Relative wobble of the outline by even harmonics, which leave the centre where it is.</summary>
    public double Roughness { get; init; } = 0.015;

    /// <summary>Relative unevenness of the core's density.</summary>
    public double CharTexture { get; init; } = 0.07;

    /// <summary>Smoke to one side: density at the core's edge; 0 for none.</summary>
    public double StainDensity { get; init; }

    /// <summary>Length over which the smoke falls to 1/e, mm.</summary>
    public double StainLength { get; init; } = 3;

    /// <summary>Direction in which the smoke went, from u towards v.</summary>
    public double StainDegrees { get; init; }
}

public enum PenColour
{
    Blue,
    Black,
    Red,
}

/// <summary>A pen line through points of the card frame (mm).</summary>
public sealed record PenSpec(PenColour Colour, double Width, IReadOnlyList<(double U, double V)> Points);

/// <summary>A blot on the card: soot (multiplies) or an opaque thing that covers it.</summary>
/// <param name="Softness">Width of its edge, mm.</param>
/// <param name="Density">Optical density of soot; an opaque blot ignores it.</param>
public sealed record BlotSpec(double U, double V, double Radius, double Softness, double Density, bool Opaque = false);
