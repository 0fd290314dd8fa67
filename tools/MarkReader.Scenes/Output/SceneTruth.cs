using System.Text.Json;
using System.Text.Json.Serialization;
using MarkReader.Quantities;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Surfaces;

namespace MarkReader.Scenes.Output;

/// <summary>What is true of a photo, as written beside it.</summary>
/// <param name="Marks">Marks sorted by u.</param>
/// <param name="Card">The card as photographed; null when there is none.</param>
/// <param name="Photo">Size as displayed, px.</param>
public sealed record SceneTruth(IReadOnlyList<MarkTruth> Marks, CardTruth? Card, PhotoSize Photo, SceneName Scene)
{
    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    /// <summary>The leg and its aim point, where the photo belongs to one.</summary>
    public LegTruth? Leg { get; init; }

    /// <summary>The refusal that is right for this photo, or null.</summary>
    public ExpectedRefusal? Expected { get; init; }

    /// <summary>What a user measured of the print and the tape, or null.</summary>
    public MeasuredSpec? Measured { get; init; }

    public static SceneTruth Of(SceneSpec spec, Camera camera)
    {
        MarkTruth Mark(BurnSpec burn)
        {
            PixelPoint at = camera.ToPhoto(new(burn.U, burn.V), spec.TapeHeight);
            double x = spec.Output.Mirrored ? spec.Camera.Width - 1 - at.X : at.X;
            double diameter = BurnSize.Of(burn).Millimetres;
            return new(burn.U, burn.V, x, at.Y, Math.Round(diameter, 3), burn.Kind);
        }

        return new(
            [.. spec.Burns.Select(Mark).OrderBy(m => m.U)],
            spec.Card is null ? null : new(spec.Card.Kind, spec.Pose.PixelsPerMm, spec.Pose.TiltDegrees, spec.Pose.TiltTowardsDegrees, spec.Pose.RollDegrees),
            new(spec.Camera.Width, spec.Camera.Height),
            new(spec.Kind, spec.Seed))
        {
            Measured = spec.Measured,
        };
    }

    public string ToJson() => JsonSerializer.Serialize(this, s_json) + "\n";
}

/// <summary>A mark's true centre in the card frame (mm) and in the photo (px), and its diameter at half depth (mm).</summary>
public sealed record MarkTruth(double U, double V, double X, double Y, double Diameter, string Kind);

/// <summary>The card's kind and pose; angles in degrees.</summary>
public sealed record CardTruth(string Kind, double PixelsPerMm, double TiltDegrees, double TiltTowardsDegrees, double RollDegrees);

/// <summary>Kind of scene and the seed that made it.</summary>
public sealed record SceneName(string Kind, int Seed);

/// <summary>Path lengths (mm) and the aim point (mm, px) of the leg to which the photo belongs.</summary>
/// <param name="Role">near, far or both.</param>
/// <param name="First">With role both: which mark is the near one (left, right, upper, lower).</param>
/// <param name="Slope">Slope of the beam, mrad.</param>
public sealed record LegTruth(
    string Name, string Role, double NearPath, double FarPath, PointTruth Near, PointTruth Far, AimTruth Aim, PointTruth Slope, string? First = null);

public sealed record PointTruth(double U, double V);

public sealed record AimTruth(double U, double V, double X, double Y);

/// <summary>The name of the refusal that the photo must get.</summary>
public sealed record ExpectedRefusal(string Error);
