using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Scenes that differ by light, sharpness and file.</summary>
internal static class LightTwists
{
    public static SceneSpec Blur(SceneSpec s, Random r) => s with { Sensor = s.Sensor with { DefocusRadius = r.Between(1.5, 4) } };

    public static SceneSpec Motion(SceneSpec s, Random r) => s with { Sensor = s.Sensor with { MotionLength = r.Between(3, 8), MotionDegrees = r.Between(0, 180) } };

    public static SceneSpec Dark(SceneSpec s, Random r) => s with
    {
        Light = s.Light with { Exposure = r.Between(0.05, 0.14), Gradient = r.Between(0, 0.8) },
        Sensor = s.Sensor with { FullWell = r.Between(900, 2200), ReadNoise = r.Between(6, 12) },
    };

    public static SceneSpec TooDark(SceneSpec s, Random r) => s with
    {
        Light = s.Light with { Exposure = r.Between(0.0015, 0.003) },
        Sensor = s.Sensor with { FullWell = 1200, ReadNoise = 5 },
    };

    /// <summary>A hard edge through the first mark.</summary>
    public static SceneSpec Shadow(SceneSpec s, Random r)
    {
        BurnSpec mark = s.Burns[0];
        ShadowSpec shadow = new(
            mark.U + (mark.Radius * r.Between(-0.8, 0.8)), mark.V + (mark.Radius * r.Between(-0.8, 0.8)), r.Between(0, 360), r.Between(0.08, 0.4), r.Between(0.35, 0.7));
        return s with { Light = s.Light with { Shadows = [shadow] } };
    }

    /// <summary>A lamp's reflection that clips about half the zone, but leaves each mark where it adds less than half of white.</summary>
    public static SceneSpec Glare(SceneSpec s, Random r)
    {
        for (int tries = 0; ; tries++)
        {
            double towards = r.Between(0, 2 * Math.PI);
            double distance = r.Between(9, 15);
            GlareSpec glare = new(
                distance * Math.Cos(towards), distance * Math.Sin(towards), r.Between(6, 11), r.Between(4, 8), (towards * 180 / Math.PI) + 90, r.Between(0.8, 2.5));
            double worst = s.Burns.Max(b => At(glare, b.U, b.V));
            if ((worst < 0.4 && worst > 0.03) || tries > 500)
                return s with { Light = s.Light with { Glares = [glare] } };
        }
    }

    public static SceneSpec Formats(SceneSpec s, Random r)
    {
        OutputSpec output = r.Pick<OutputSpec>(
            new(PhotoFormat.Png), new(PhotoFormat.Png, Alpha: true), new(PhotoFormat.Png16), new(PhotoFormat.Png16, Grey: true), new(PhotoFormat.Png, Grey: true),
            new(PhotoFormat.WebP, r.Next(75, 95)), new(Grey: true), new(Orientation: r.Next(2, 9)),
            new(PhotoFormat.CmykJpeg), new(PhotoFormat.CmykJpeg, Grey: true), new(PhotoFormat.WebPLossless));
        return s.Shrunk(0.5) with { Output = output };
    }

    private static double At(GlareSpec glare, double u, double v)
    {
        (double sin, double cos) = Math.SinCos(glare.TurnDegrees * Math.PI / 180);
        double a = (((u - glare.U) * cos) + ((v - glare.V) * sin)) / glare.SigmaLong;
        double b = (((v - glare.V) * cos) - ((u - glare.U) * sin)) / glare.SigmaShort;
        return glare.Strength * Math.Exp(-((a * a) + (b * b)) / 2);
    }
}
