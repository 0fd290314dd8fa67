namespace MarkReader.Rendering.Specs;

/// <summary>Everything that decides one rendered photo. Equal specs give equal bytes.</summary>
/// <param name="Kind">Name of the kind of scene.</param>
/// <param name="Seed">Seed of the textures and of the sensor's noise.</param>
public sealed record SceneSpec(string Kind, int Seed)
{
    public CameraSpec Camera { get; init; } = new();

    public PoseSpec Pose { get; init; } = new();

    /// <summary>The printed card; null for a photo without one.</summary>
    public CardSpec? Card { get; init; } = new();

    /// <summary>A second card lying on the target, its centre and turn in the first card's frame.</summary>
    public PlacedCardSpec? SecondCard { get; init; }

    public TargetSpec Target { get; init; } = new();

    /// <summary>Strips laid on the card, in order.</summary>
    public IReadOnlyList<TapeSpec> Tapes { get; init; } = [];

    public IReadOnlyList<BurnSpec> Burns { get; init; } = [];

    public IReadOnlyList<PenSpec> Pens { get; init; } = [];

    /// <summary>Dirt and things that cover the card, in order.</summary>
    public IReadOnlyList<BlotSpec> Blots { get; init; } = [];

    public LightSpec Light { get; init; } = new();

    public SensorSpec Sensor { get; init; } = new();

    public OutputSpec Output { get; init; } = new();

    /// <summary>Seed of the sensor's noise when it differs from the textures' (several photos of the same tape).</summary>
    public int? NoiseSeed { get; init; }

    /// <summary>Materials without texture, for checks of the geometry.</summary>
    public bool Plain { get; init; }

    /// <summary>Height of tapes and burns over the card's plane, mm; negative when the card lies on the tape.</summary>
    public double TapeHeight { get; init; }

    /// <summary>What a user measured of the print and the tape, with its error; null: nothing.</summary>
    public MeasuredSpec? Measured { get; init; }

    /// <summary>The same scene photographed with a picture smaller by this factor (0 to 1): everything measured in pixels shrinks, noise and light do not.</summary>
    public SceneSpec Shrunk(double factor) => this with
    {
        Camera = Camera with
        {
            Width = (int)(Camera.Width * factor),
            Height = (int)(Camera.Height * factor),
            FocalLength = Camera.FocalLength * factor,
            PrincipalX = Camera.PrincipalX * factor,
            PrincipalY = Camera.PrincipalY * factor,
        },
        Pose = Pose with { PixelsPerMm = Pose.PixelsPerMm * factor },
        Sensor = Sensor with { DefocusRadius = Sensor.DefocusRadius * factor, MotionLength = Sensor.MotionLength * factor },
    };
}

/// <summary>A camera without a pose.</summary>
/// <param name="Width">Width as displayed, px.</param>
/// <param name="Height">Height as displayed, px.</param>
/// <param name="FocalLength">Focal length, px.</param>
/// <param name="PrincipalX">Principal point from the picture's middle, px, to the right.</param>
/// <param name="PrincipalY">Principal point from the picture's middle, px, down.</param>
/// <param name="K1">Radial distortion: r' = r(1 + K1 r² + K2 r⁴) in units of the focal length (Brown, Photogramm. Eng. 32, 1966).</param>
public sealed record CameraSpec(
    int Width = 4032, int Height = 3024, double FocalLength = 3000, double PrincipalX = 0, double PrincipalY = 0, double K1 = 0, double K2 = 0)
{
    /// <summary>The next radial term.</summary>
    public double K3 { get; init; }

    /// <summary>Decentring: x' gains 2·P1·x·y + P2·(r² + 2x²), y' gains P1·(r² + 2y²) + 2·P2·x·y.</summary>
    public double P1 { get; init; }

    public double P2 { get; init; }
}

/// <summary>Where the card is in the photo.</summary>
/// <param name="PixelsPerMm">Scale at the card's centre across the line of sight.</param>
/// <param name="TiltDegrees">Angle between the card's normal and the line of sight to its centre.</param>
/// <param name="TiltTowardsDegrees">Direction in the card, from u towards v, in which the camera stands.</param>
/// <param name="RollDegrees">Turn of the card in the photo, counter-clockwise.</param>
/// <param name="CentreX">Where the card's centre appears: 0 left edge, 1 right edge.</param>
/// <param name="CentreY">0 upper edge, 1 lower edge.</param>
public sealed record PoseSpec(
    double PixelsPerMm = 30, double TiltDegrees = 0, double TiltTowardsDegrees = 0, double RollDegrees = 0, double CentreX = 0.5, double CentreY = 0.5);

/// <summary>The printed card.</summary>
/// <param name="Kind">Name of its kind, or of the calibration board.</param>
/// <param name="InkSpread">How far each printed edge stands out, mm.</param>
/// <param name="InkSoftness">Standard deviation of a printed edge, mm; at least 1.5 cells of the ink raster.</param>
/// <param name="PrintScaleU">Printed length over intended length along u; positions stay true millimetres.</param>
/// <param name="Curvature">1 / radius of the cylinder on which the card lies, 1/mm; positive with the middle away from the camera.</param>
/// <param name="CurveDegrees">Direction in the card along which it bends.</param>
/// <param name="CutMargin">Paper beyond the cut outline, mm.</param>
/// <param name="InkAlbedo">Share of light that ink sends back.</param>
public sealed record CardSpec(
    string Kind = "plate",
    double InkSpread = 0.01,
    double InkSoftness = 0.03,
    double PrintScaleU = 1,
    double PrintScaleV = 1,
    double Curvature = 0,
    double CurveDegrees = 0,
    double CutMargin = 1,
    double InkAlbedo = 0.04);

/// <summary>A card placed in the frame of another: its centre (mm) and its turn counter-clockwise.</summary>
public sealed record PlacedCardSpec(string Kind, double U, double V, double TurnDegrees);

public enum TargetMaterial
{
    Wood,
    PaintedMetal,
    BrushedMetal,
    Cardboard,
}

/// <summary>The target to which the card is taped, and what is behind it.</summary>
/// <param name="HalfWidth">Half the plate's width, mm; beyond it the machine's dim inside is seen.</param>
/// <param name="Screws">Screw heads and holes on the target, outside the card.</param>
public sealed record TargetSpec(
    TargetMaterial Material = TargetMaterial.PaintedMetal, double HalfWidth = 400, double HalfHeight = 400, IReadOnlyList<ScrewSpec>? Screws = null);

/// <summary>A screw head (or a plain dark hole) at a place of the card frame, mm.</summary>
public sealed record ScrewSpec(double U, double V, double Radius, bool Hole);

/// <summary>A user's readings, mm: printed rulers end to end, height of the tape over the card's plane, with the standard uncertainties by which they are off.</summary>
public sealed record MeasuredSpec(
    double? RulerU = null, double? RulerV = null, double? RulerUncertainty = null, double? TapeHeight = null, double? TapeHeightUncertainty = null);
