using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Surfaces;

namespace MarkReader.Rendering.Exposure;

/// <summary>The light at a place: what multiplies the albedo, and what a lamp's reflection adds.</summary>
internal sealed class Illumination(LightSpec spec, CameraSpec camera)
{
    private readonly double _gx = Math.Cos(spec.GradientDegrees * Math.PI / 180);
    private readonly double _gy = Math.Sin(spec.GradientDegrees * Math.PI / 180);
    private readonly double _diagonal = Math.Sqrt(((double)camera.Width * camera.Width) + ((double)camera.Height * camera.Height));

    private readonly ShadowSpec[] _shadows = [.. spec.Shadows];
    private readonly GlareSpec[] _glares = [.. spec.Glares];

    /// <summary>Light at photo point (x, y), which shows card place (u, v).</summary>
    public (Rgb Times, float Plus) At(double x, double y, double u, double v)
    {
        double dx = (x - (camera.Width / 2.0)) / _diagonal;
        double dy = (y - (camera.Height / 2.0)) / _diagonal;
        double light = spec.Exposure * (1 + (spec.Gradient * ((dx * _gx) + (dy * _gy))));
        double r2 = 4 * ((dx * dx) + (dy * dy));
        light *= 1 - (spec.Vignetting * r2 * ((0.6 + (0.4 * r2))));
        double plus = 0;
        if (!double.IsNaN(u))
        {
            foreach (ShadowSpec shadow in _shadows)
            {
                double a = shadow.TowardsDegrees * Math.PI / 180;
                double inside = ((u - shadow.U) * Math.Cos(a)) + ((v - shadow.V) * Math.Sin(a));
                light *= 1 - (shadow.Depth * Normal.Distribution(inside / shadow.Width));
            }

            foreach (GlareSpec glare in _glares)
                plus += Glare(glare, u - glare.U, v - glare.V);
        }

        return ((float)light * new Rgb((float)spec.Red, 1, (float)spec.Blue), (float)(plus * spec.Exposure));
    }

    private static double Glare(GlareSpec glare, double du, double dv)
    {
        double t = glare.TurnDegrees * Math.PI / 180;
        double a = ((du * Math.Cos(t)) + (dv * Math.Sin(t))) / glare.SigmaLong;
        double b = ((dv * Math.Cos(t)) - (du * Math.Sin(t))) / glare.SigmaShort;
        double q = (a * a) + (b * b);
        return q > 60 ? 0 : glare.Strength * Math.Exp(-q / 2);
    }
}
