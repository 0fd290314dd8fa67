using CsCheck;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Tests.Rectification;

public sealed class PixelProfileTests
{
    private const int Side = 40;
    private const double HalfLength = 6, Reach = 5;

    /// <summary>Along rows and columns all pixels of an edge lie at the same distances from it.</summary>
    [Fact]
    public void An_edge_is_found_wherever_it_lies_between_the_pixels_and_whichever_way() =>
        Gen.Select(Gen.Double[0, 1], Gen.OneOf(Gen.Const(0.0), Gen.Const(90.0), Gen.Double[0, 360]), Gen.Double[0.6, 1.2]).Sample((phase, degrees, sigma) =>
        {
            EdgeProfileFit.Result fit = Locate(phase, degrees, sigma, 0);
            return fit.Converged && Math.Abs(fit.Place) < 0.01;
        });

    [Fact]
    public void A_fall_of_the_light_is_taken_out() => Gen.Select(Gen.Double[0, 1], Gen.Double[-0.01, 0.01]).Sample((phase, slope) =>
    {
        EdgeProfileFit.Result fit = Locate(phase, 0, 0.8, slope);
        return fit.Converged && Math.Abs(fit.Place) < 0.01;
    });

    /// <summary>Noise of a step of the pixels' values, as every photo has, keeps their rounding from adding up. Where an edge through the given place is found, off that place.</summary>
    private static EdgeProfileFit.Result Locate(double phase, double degrees, double sigma, double slope)
    {
        PixelPoint middle = new((Side / 2) + phase, (Side / 2) + phase);
        PixelVector normal = new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
        Random noise = new(1);
        using Mat photo = new(Side, Side, MatType.CV_8UC1);
        for (int y = 0; y < Side; y++)
        {
            for (int x = 0; x < Side; x++)
            {
                double across = ((x - middle.X) * normal.X) + ((y - middle.Y) * normal.Y);
                double light = (0.05 + (0.6 * MathNet.Numerics.Distributions.Normal.CDF(0, sigma, across))) * (1 + (slope * across));
                photo.Set(y, x, (byte)((255 * ((1.055 * Math.Pow(light, 1 / 2.4)) - 0.055)) + noise.NextDouble()));
            }
        }

        PixelProfile profile = new(new double[PixelProfile.Room((int)Reach)]);
        profile.Fill(new PixelSampler(photo), middle, HalfLength, 0, normal, Reach);
        profile.Level(slope);
        return EdgeProfileFit.Refine(profile.Places, profile.Values, profile.Weights, Reach, new(true, 0.3, 0, 1, 0.5, 0.6));
    }
}
