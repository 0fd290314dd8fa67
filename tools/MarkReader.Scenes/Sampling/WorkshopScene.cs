using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Several moderate difficulties at once, as in a hurried photo.</summary>
internal static class WorkshopScene
{
    public static SceneSpec Turn(SceneSpec s, Random r)
    {
        s = SurfaceTwists.Material(s, r, r.Pick(Enum.GetValues<TapeMaterial>()));
        s = s with
        {
            Camera = s.Camera with { K1 = r.Between(-0.03, 0.02) },
            Pose = s.Pose with { TiltDegrees = r.Between(8, 38), RollDegrees = r.Between(-60, 60), PixelsPerMm = s.Pose.PixelsPerMm * r.Between(0.5, 1) },
            Light = s.Light with { Gradient = r.Between(0.2, 0.9), Exposure = r.Between(0.35, 0.9) },
            Sensor = s.Sensor with { DefocusRadius = r.Chance(0.5) ? r.Between(0.5, 1.8) : 0, FullWell = r.Between(1500, 5000) },
        };
        if (r.Chance(0.4))
            s = s with { Light = s.Light with { Shadows = [new(r.Between(-20, 20), r.Between(-20, 20), r.Between(0, 360), r.Between(1, 8), r.Between(0.2, 0.5))] } };
        if (r.Chance(0.3))
            s = BurnTwists.Stain(s, r);
        else if (r.Chance(0.3))
            s = BurnTwists.Ring(s, r);
        return r.Chance(0.3) ? SurfaceTwists.Pen(s, r) : s;
    }
}
