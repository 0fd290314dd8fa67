using MarkReader.Quantities;

namespace MarkReader.Alignment.Legs;

/// <summary>From the tape to the beam: x and y across the beam (mm), z along it, counted from the reflecting point.</summary>
/// <remarks>
/// A tape point (u, v) with the carriage at path length L lies at x = u·cos t, y = v, z = L + u·sin t,
/// t being the incidence angle in the plane of u.
/// </remarks>
internal readonly struct BeamFrame(Angle incidence)
{
    public double Cos { get; } = Math.Cos(incidence.Radians);

    public double Sin { get; } = Math.Sin(incidence.Radians);

    /// <summary>Where the line x = x0 + sx·z, y = y0 + sy·z meets the tape of a carriage at <paramref name="path"/> (mm).</summary>
    public CardPoint OnTape(BeamLine line, double path)
    {
        double u = (line.X0 + (line.Sx * path)) / (Cos - (line.Sx * Sin));
        return new(u, line.Y0 + (line.Sy * (path + (u * Sin))));
    }

    /// <summary>Where a beam parallel to the rail through (x, y) meets the tape; the place does not depend on the path length.</summary>
    public CardPoint OnTapeStraight(double x, double y) => new(x / Cos, y);
}

/// <summary>The beam's line in beam coordinates: offsets (mm) at the reflecting point, and slopes (mm per mm).</summary>
internal readonly record struct BeamLine(double X0, double Sx, double Y0, double Sy);
