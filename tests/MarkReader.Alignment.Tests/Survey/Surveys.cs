using MarkReader.Alignment.Survey;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Tests.Survey;

/// <summary>Simulated corner surveys: plane slopes, a raised or lowered mark at a corner, and normal errors.</summary>
internal sealed record Surveys(double WalkGantryU = 0, double WalkGantryV = 0, double WalkHeadU = 0, double WalkHeadV = 0, BedCorner Corner = BedCorner.FarRight, double Height = 0)
{
    public static readonly Bed Bed = new(Some.Mm(500), Some.Mm(400));

    public static readonly (double S, double T)[] Corners = [(0, 0), (1, 0), (0, 1), (1, 1)];

    public static readonly (double S, double T)[] Nine = [.. from s in new[] { 0, 0.5, 1 } from t in new[] { 0, 0.5, 1 } select (s, t)];

    public CardPoint At(double s, double t) => new(
        1.5 + (WalkHeadU * s) + (WalkGantryU * t),
        -0.7 + (WalkHeadV * s) + (WalkGantryV * t) + (Height * Bump(s, t)));

    public SurveyMark[] Marks((double S, double T)[] places, double u, MersenneTwister? random = null) =>
    [
        .. places.Select(p => new SurveyMark(
            p.S * Bed.X, p.T * Bed.Y, new(At(p.S, p.T) + (random is null ? default : new CardVector(Normal.Sample(random, 0, u), Normal.Sample(random, 0, u))), Covariance2.Isotropic(u)))),
    ];

    private double Bump(double s, double t) => (Corner.IsRight() ? s : 1 - s) * (Corner.End() == GantryEnd.Far ? t : 1 - t);
}
