using MarkReader.Quantities;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>How large a burn looks: the circle within which the grey value lies more than half-way from the surroundings to the darkest ring.</summary>
public static class BurnSize
{
    /// <summary>That circle's diameter; of an ellipse, the diameter of the circle of the same area.</summary>
    public static Length Of(BurnSpec burn) => Length.FromMillimetres(new Burn(burn, 0).DiameterAtHalfDepth());

    /// <summary>The burn made to look <paramref name="diameter"/> wide; its edge and the halo beyond its core keep their widths.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above zero.</exception>
    public static BurnSpec Make(BurnSpec burn, Length diameter)
    {
        ArgumentNullException.ThrowIfNull(burn);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(diameter, Length.Zero);
        for (int i = 0; i < 20; i++)
        {
            // The diameter grows by about twice what the core's radius does.
            double radius = Math.Max(0.5 * burn.Radius, burn.Radius + ((diameter - Of(burn)).Millimetres / 2));
            burn = burn with { Radius = radius, HaloRadius = burn.HaloRadius + radius - burn.Radius };
        }

        return burn;
    }
}
