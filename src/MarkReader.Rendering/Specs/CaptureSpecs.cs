namespace MarkReader.Rendering.Specs;

/// <summary>Light on the target, relative to the light at the card's centre.</summary>
/// <param name="Exposure">Linear value of a white diffuser at the card's centre: 1 clips.</param>
/// <param name="Gradient">Relative change of the light over the picture's diagonal.</param>
/// <param name="GradientDegrees">Direction in which it grows in the photo, clockwise from the right.</param>
/// <param name="Vignetting">Loss of light in the picture's corners, 0 to 1.</param>
/// <param name="Red">Colour of the light relative to green.</param>
/// <param name="Blue">Colour of the light relative to green.</param>
public sealed record LightSpec(
    double Exposure = 0.75, double Gradient = 0.15, double GradientDegrees = 30, double Vignetting = 0.2, double Red = 1.03, double Blue = 0.93)
{
    public IReadOnlyList<ShadowSpec> Shadows { get; init; } = [];

    public IReadOnlyList<GlareSpec> Glares { get; init; } = [];
}

/// <summary>A shadow with a straight edge through (U, V), mm; it lies on the side to which the direction points.</summary>
/// <param name="Width">Standard deviation of the edge, mm.</param>
/// <param name="Depth">Share of the light that is missing.</param>
public sealed record ShadowSpec(double U, double V, double TowardsDegrees, double Width, double Depth);

/// <summary>A lamp's reflection: light added about (U, V), Gaussian with these standard deviations in mm.</summary>
public sealed record GlareSpec(double U, double V, double SigmaLong, double SigmaShort, double TurnDegrees, double Strength);

/// <summary>Lens blur and sensor.</summary>
/// <param name="LensSigma">Standard deviation of the lens's own blur, px.</param>
/// <param name="DefocusRadius">Radius of the disc of confusion, px.</param>
/// <param name="MotionLength">Length of the path of a point during exposure, px.</param>
/// <param name="MotionDegrees">Direction of the motion in the photo, clockwise from the right.</param>
/// <param name="FullWell">Electrons at a linear value of 1 (shot noise).</param>
/// <param name="ReadNoise">Standard deviation of the read noise in electrons; both 0 for no noise.</param>
/// <param name="NoiseGrain">Standard deviation of the smoothing that a phone's development gives the noise, px.</param>
/// <param name="Sharpening">Amount of unsharp masking by the phone.</param>
/// <param name="Tone">Share of an S-shaped tone curve in the developed picture, 0 to 1.</param>
public sealed record SensorSpec(
    double LensSigma = 0.6,
    double DefocusRadius = 0,
    double MotionLength = 0,
    double MotionDegrees = 0,
    double FullWell = 6000,
    double ReadNoise = 4,
    double NoiseGrain = 0.5,
    double Sharpening = 0.2,
    double Tone = 0.15);

public enum PhotoFormat
{
    Jpeg,
    Png,
    Png16,
    WebP,
    WebPLossless,

    /// <summary>Four inks, as a picture comes out of a printing program.</summary>
    CmykJpeg,
}

/// <summary>How the photo is stored.</summary>
/// <param name="Quality">Quality of JPEG and WebP, 1 to 100.</param>
/// <param name="Orientation">EXIF orientation, 1 to 8; pixels are stored turned so that the displayed picture is upright.</param>
/// <param name="Grey">Stored without colour.</param>
/// <param name="Alpha">Stored with an opaque alpha channel (PNG only).</param>
/// <param name="Mirrored">The finished picture is flipped left to right, as if taken in a mirror.</param>
public sealed record OutputSpec(
    PhotoFormat Format = PhotoFormat.Jpeg, int Quality = 90, int Orientation = 1, bool Grey = false, bool Alpha = false, bool Mirrored = false)
{
    /// <summary>What EXIF says of camera and lens; null: nothing.</summary>
    public LensSpec? Lens { get; init; }
}

/// <summary>A camera and lens as EXIF states them.</summary>
/// <param name="Model">Model name.</param>
/// <param name="FocalLength">mm, to hundredths.</param>
/// <param name="FocalLength35">35 mm equivalent, mm.</param>
public sealed record LensSpec(string Model, double FocalLength, int FocalLength35);
