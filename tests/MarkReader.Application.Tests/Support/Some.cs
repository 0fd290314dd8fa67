using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Quality;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Support;

/// <summary>Short ways to write measured photos.</summary>
internal static class Some
{
    public static Mark Mark(double u, double v, double sigma = 0.01, double diameter = 2) => new(
        new(new(u, v), Covariance2.Isotropic(sigma)),
        Upright.Instance.ToPhoto(new(u, v)),
        Length.FromMillimetres(diameter),
        new(1, 0.8, 0.1),
        [new(UncertaintySource.Noise, Covariance2.Isotropic(sigma))]);

    public static PhotoMeasurement Photo(params Mark[] marks) => Photo("plate", marks);

    public static PhotoMeasurement Photo(string kind, params Mark[] marks) => new(
        new(1000, 1000),
        new(kind, Length.FromMillimetres(26), 8, Upright.Scale, Angle.Zero, 0.1),
        Upright.Instance,
        new(CardPoint.Origin, Length.FromMillimetres(150)),
        [.. marks.OrderBy(m => m.Centre.Point.U)],
        [],
        new(Upright.Scale, Angle.Zero, 1, 0.6, 0, 0.01, new(0, PhotoSide.Middle), 0.1, 1, 8, 8, 0.1),
        []);

    /// <summary>A card seen squarely from above, 16 px/mm, its arrow turned clockwise by quarter turns.</summary>
    public sealed class Upright(int quarterTurns = 0) : ICardProjection
    {
        public const double Scale = 16;

        public static Upright Instance { get; } = new();

        public PixelPoint ToPhoto(CardPoint point)
        {
            (double sin, double cos) = Math.SinCos(quarterTurns * Math.PI / 2);
            return new(500 + (Scale * ((point.U * cos) + (point.V * sin))), 500 - (Scale * ((point.V * cos) - (point.U * sin))));
        }

        public CardPoint ToCard(PixelPoint point)
        {
            (double sin, double cos) = Math.SinCos(quarterTurns * Math.PI / 2);
            (double a, double b) = ((point.X - 500) / Scale, (500 - point.Y) / Scale);
            return new((a * cos) - (b * sin), (a * sin) + (b * cos));
        }
    }
}
