using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Surfaces;

namespace MarkReader.Rendering.Exposure;

/// <summary>The light at a place: what multiplies the albedo, and what a lamp's reflection adds.</summary>
internal sealed class Illumination(LightSpec spec, CameraSpec camera)
{
    private readonly double _gx = Math.Cos(spec.GradientDegrees * Math.PI / 180);
    private readonly double _gy = Math.Sin(spec.GradientDegrees * Math.PI / 180);
    private readonly double _diagonal = Math.Sqrt(((double)camera.Width * camera.Width) + ((double)camera.Height * camera.Height));

    private readonly Rgb _colour = new((float)spec.Red, 1, (float)spec.Blue);
    private readonly Turned<ShadowSpec>[] _shadows = [.. spec.Shadows.Select(s => new Turned<ShadowSpec>(s, s.TowardsDegrees))];
    private readonly Turned<GlareSpec>[] _glares = [.. spec.Glares.Select(g => new Turned<GlareSpec>(g, g.TurnDegrees))];

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
            foreach ((ShadowSpec shadow, double cos, double sin) in _shadows)
            {
                double inside = ((u - shadow.U) * cos) + ((v - shadow.V) * sin);
                light *= 1 - (shadow.Depth * Normal.Distribution(inside / shadow.Width));
            }

            foreach (Turned<GlareSpec> glare in _glares)
                plus += Glare(glare, u - glare.Spec.U, v - glare.Spec.V);
        }

        return ((float)light * _colour, (float)(plus * spec.Exposure));
    }

    private static double Glare(Turned<GlareSpec> turned, double du, double dv)
    {
        (GlareSpec glare, double cos, double sin) = turned;
        double a = ((du * cos) + (dv * sin)) / glare.SigmaLong;
        double b = ((dv * cos) - (du * sin)) / glare.SigmaShort;
        double q = (a * a) + (b * b);
        return q > 60 ? 0 : glare.Strength * Math.Exp(-q / 2);
    }

    /// <summary>With the direction that is the same for all pixels.</summary>
    private readonly record struct Turned<TSpec>(TSpec Spec, double Cos, double Sin)
    {
        public Turned(TSpec spec, double degrees)
            : this(spec, Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180))
        {
        }
    }
}
