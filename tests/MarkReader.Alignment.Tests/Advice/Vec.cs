using System.Numerics;

namespace MarkReader.Alignment.Tests.Advice;

/// <summary>A vector of the practice leg, mm.</summary>
internal readonly record struct Vec(double X, double Y, double Z) : IAdditionOperators<Vec, Vec, Vec>, ISubtractionOperators<Vec, Vec, Vec>
{
    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vec operator *(double f, Vec a) => new(f * a.X, f * a.Y, f * a.Z);

    public double Dot(Vec b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    public Vec Cross(Vec b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    public Vec Unit() => (1 / Math.Sqrt(Dot(this))) * this;
}
