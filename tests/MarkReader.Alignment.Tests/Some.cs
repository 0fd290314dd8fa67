using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests;

/// <summary>Short ways to write legs, stations and marks.</summary>
internal static class Some
{
    public static Station Station(double path, double uncertainty = 0) => new(Mm(path), Mm(uncertainty));

    public static Observation Mark(double path, double u, double v, double sigma = 0.01) => new(Station(path), Point(u, v, sigma));

    public static MeasuredPoint Point(double u, double v, double sigma = 0.01) => new(new(u, v), Covariance2.Isotropic(sigma));

    public static Leg Leg(double incidenceDegrees = 0, double pivot = 0, double pivotUncertainty = 0) =>
        new(Angle.FromDegrees(incidenceDegrees), Mm(pivot), Mm(pivotUncertainty));

    public static Length Mm(double value) => Length.FromMillimetres(value);
}
