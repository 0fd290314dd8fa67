using MarkReader.Cards;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Scenes that differ by where the camera stands and by the card's shape.</summary>
internal static class PoseTwists
{
    public static SceneSpec Tilt(SceneSpec s, Random r) => s with { Pose = s.Pose with { TiltDegrees = r.Between(25, 55) } };

    public static SceneSpec Small(SceneSpec s, Random r) =>
        s with { Pose = s.Pose with { PixelsPerMm = r.Between(10, 14), CentreX = r.Between(0.2, 0.8), CentreY = r.Between(0.2, 0.8), TiltDegrees = r.Between(0, 25) } };

    public static SceneSpec Large(SceneSpec s, Random r) => s with
    {
        Pose = s.Pose with
        {
            PixelsPerMm = Math.Min(s.Camera.Width, s.Camera.Height) / r.Between(53, 57),
            CentreX = 0.5,
            CentreY = 0.5,
            TiltDegrees = r.Between(0, 4),
            RollDegrees = r.Between(-2, 2) + r.Pick(0, 0, 90, 180),
        },
    };

    public static SceneSpec Rotated(SceneSpec s, Random r) => s with { Pose = s.Pose with { RollDegrees = r.Between(-180, 180), TiltDegrees = r.Between(0, 30) } };

    public static SceneSpec WideLens(SceneSpec s, Random r)
    {
        // Barrel distortion by its size at the picture's corner; up to 0.13 the polynomial still has an inverse there.
        double width = Math.Max(s.Camera.Width, s.Camera.Height);
        double focal = width * r.Between(0.45, 0.62);
        double corner = 0.625 * width / focal;
        double shrink = r.Between(0.03, 0.13);
        return s with
        {
            Camera = s.Camera with { FocalLength = focal, K1 = -shrink / Math.Pow(corner, 2), K2 = r.Between(0, 0.15) * shrink / Math.Pow(corner, 4) },
            Pose = s.Pose with { PixelsPerMm = s.Pose.PixelsPerMm * r.Between(0.7, 1.1), CentreX = r.Between(0.32, 0.68), CentreY = r.Between(0.35, 0.65) },
        };
    }

    /// <summary>The middle of the card 0.3 to 1 mm off its edges' plane.</summary>
    public static SceneSpec Curved(SceneSpec s, Random r) => s with
    {
        Card = s.Card! with { Curvature = r.Pick(-1, 1) * r.Between(0.3, 1) * 2 / (25.0 * 25), CurveDegrees = r.Pick(0, 90) + r.Between(-10, 10) },
        Pose = s.Pose with { TiltDegrees = r.Between(0, 25) },
    };

    /// <summary>Burnt surface above or below the card's plane: thick tape, or a card with its zone cut out; the height is measured.</summary>
    public static SceneSpec Lifted(SceneSpec s, Random r)
    {
        const double Uncertainty = 0.03;
        double height = r.Pick(-1, 1) * r.Between(0.1, 0.4);
        return s with
        {
            TapeHeight = height,
            Pose = s.Pose with { TiltDegrees = r.Between(0, 30) },
            Measured = new(TapeHeight: Math.Round(height + (Uncertainty * r.Normal()), 3), TapeHeightUncertainty: Uncertainty),
        };
    }

    /// <summary>A card printed up to 2 % too large or too small, differently along both axes; its rulers are measured.</summary>
    public static SceneSpec PrintScale(SceneSpec s, Random r)
    {
        const double Uncertainty = 0.05;
        CardKind kind = CardKinds.Find(s.Card!.Kind)!;
        (double u, double v) = (r.Between(0.98, 1.02), r.Between(0.98, 1.02));
        double Read(double scale, bool alongU) => Math.Round(
            (scale * kind.Rulers.Select(l => l.To - l.From).Single(l => Math.Abs(l.U) > Math.Abs(l.V) == alongU).Magnitude) + (Uncertainty * r.Normal()), 3);
        return s with
        {
            Card = s.Card with { PrintScaleU = u, PrintScaleV = v },
            Measured = new(Read(u, true), Read(v, false), Uncertainty),
        };
    }
}
