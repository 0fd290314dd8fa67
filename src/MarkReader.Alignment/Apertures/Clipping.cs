using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace MarkReader.Alignment.Apertures;

/// <summary>What apertures let through when offsets and beam radii are uncertain.</summary>
/// <remarks>
/// At a centred aperture the first derivative by the offset is zero, so a first-order budget states no loss and no uncertainty at all
/// (the case of JCGM 101:2008, 9.4). Instead the distributions are drawn (JCGM 101:2008, 5.9 and 7): offsets bivariate normal, beam radii normal,
/// offsets at different apertures independent. The draws are seeded: the same question has the same answer.
/// </remarks>
public static class Clipping
{
    /// <summary>Most apertures in a row.</summary>
    public const int MostApertures = 8;

    /// <summary>The beam's radius must be at least this many times its standard uncertainty.</summary>
    public const double RadiusOverUncertainty = 4;

    /// <summary>Draws for one aperture; its standard uncertainty is then good to 0.5 %.</summary>
    private const int Draws = 20_000;

    private const int DrawsInARow = 4_000;
    private const int Seed = 101_2008;
    private static string Hint => AlignmentTexts.Get("clipping.giveRadiiInMmOpening");

    /// <summary>Power through one aperture.</summary>
    public static Outcome<TransmittedPower> Through(BeamAperture aperture) => Through([aperture]);

    /// <summary>Power that passes all of these apertures, in any order.</summary>
    public static Outcome<TransmittedPower> Through(IReadOnlyList<BeamAperture> apertures)
    {
        if (Check(apertures) is { } wrong)
            return wrong;
        MersenneTwister random = new(Seed, threadSafe: false);
        int draws = apertures.Count == 1 ? Draws : DrawsInARow;
        double[] transmitted = new double[draws];
        (double Radius, double W, CardVector Offset)[] drawn = new (double, double, CardVector)[apertures.Count];
        for (int i = 0; i < draws; i++)
        {
            for (int j = 0; j < drawn.Length; j++)
                drawn[j] = Draw(apertures[j], random);
            transmitted[i] = Part(drawn);
        }

        Array.Sort(transmitted);
        double mean = transmitted.Average();
        return new TransmittedPower(
            Part([.. apertures.Select(a => (a.Radius.Millimetres, a.BeamRadius.Value.Millimetres, a.Offset.Point - CardPoint.Origin))]),
            mean,
            Math.Sqrt(transmitted.Sum(t => (t - mean) * (t - mean)) / (draws - 1)),
            transmitted[(draws / 40) - 1],
            transmitted[draws - (draws / 40) - 1],
            transmitted[draws / 20]);
    }

    private static double Part((double Radius, double W, CardVector Offset)[] apertures) => apertures.Length == 1
        ? GaussianClipping.Transmitted(apertures[0].Radius, apertures[0].W, apertures[0].Offset.Magnitude)
        : ApertureRow.Transmitted([.. apertures.Select(a => new ApertureRow.Disc(-2 * a.Offset.U / a.W, -2 * a.Offset.V / a.W, 2 * a.Radius / a.W))]);

    private static (double Radius, double W, CardVector Offset) Draw(BeamAperture aperture, MersenneTwister random)
    {
        Covariance2 c = aperture.Offset.Covariance;
        double first = Normal.Sample(random, 0, 1), second = Normal.Sample(random, 0, 1), root = Math.Sqrt(c.Uu);
        double across = root > 0 ? c.Uv / root : 0;
        CardVector error = new(root * first, (across * first) + (Math.Sqrt(Math.Max(0, c.Vv - (across * across))) * second));
        double w, mean = aperture.BeamRadius.Value.Millimetres;
        do
            w = Normal.Sample(random, mean, aperture.BeamRadius.Uncertainty.Millimetres);
        while (w < mean / 10);
        return (aperture.Radius.Millimetres, w, aperture.Offset.Point - CardPoint.Origin + error);
    }

    private static Failure? Check(IReadOnlyList<BeamAperture> apertures)
    {
        if (apertures.Count is 0 or > MostApertures)
            return new(ApertureFailures.ApertureCount, AlignmentTexts.Word("clipping.aperturesWereGiven", apertures.Count), AlignmentTexts.Get("clipping.giveOneEightApertures"));
        return apertures.Select(Check).FirstOrDefault(wrong => wrong is not null);
    }

    private static Failure? Check(BeamAperture aperture)
    {
        double w = aperture.BeamRadius.Value.Millimetres, u = aperture.BeamRadius.Uncertainty.Millimetres;
        double offset = (aperture.Offset.Point - CardPoint.Origin).Magnitude, spread = Math.Sqrt(aperture.Offset.Covariance.Uu + aperture.Offset.Covariance.Vv);
        return InputChecks.Lengths(aperture.Radius.Millimetres, (0.1, 100), ApertureFailures.ApertureRadius, AlignmentTexts.Say("clipping.radius", aperture.Name), Hint)
            ?? InputChecks.Lengths(w, (0.05, 100), ApertureFailures.BeamRadius, AlignmentTexts.Get("clipping.beamRadius"), Hint)
            ?? InputChecks.Lengths(u, (0, w / RadiusOverUncertainty), ApertureFailures.BeamRadiusUncertain, AlignmentTexts.Get("clipping.standardUncertaintyBeamRadius"), AlignmentTexts.Get("clipping.measureBeamSizeWithMarks"))
            ?? InputChecks.Lengths(offset, (0, 200), ApertureFailures.ApertureOffset, AlignmentTexts.Get("clipping.beamOffset"), Hint)
            ?? InputChecks.Lengths(spread, (0, 200), ApertureFailures.ApertureOffset, AlignmentTexts.Get("clipping.uncertaintyBeamOffset"), Hint);
    }
}
