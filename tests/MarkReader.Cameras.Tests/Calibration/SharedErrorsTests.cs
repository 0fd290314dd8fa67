using MarkReader.Cameras.Calibration;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Tests.Calibration;

/// <summary>A straight line through values of twelve photos, each over a part of the range, with errors of known make.</summary>
public sealed class SharedErrorsTests
{
    private const int Views = 12, Sightings = 40, Places = 30, Runs = 400;

    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(0.3, 0.0)]
    [InlineData(0.0, 0.3)]
    [InlineData(0.3, 0.3)]
    public void What_is_raised_is_the_scatter_of_the_estimates(double ofView, double ofPlace)
    {
        Random random = new(7);
        double scatter = 0, stated = 0;
        for (int run = 0; run < Runs; run++)
        {
            (double[] error, double[] independent, double[] inflation) = Run(random, ofView, ofPlace);
            for (int f = 0; f < 2; f++)
            {
                scatter += error[f] * error[f] / independent[f];
                stated += inflation[f] * inflation[f];
            }
        }

        // Never lowered: rather a little high.
        Assert.InRange(stated / scatter, 0.85, 1.45);
    }

    private static (double[] Errors, double[] Independent, double[] Inflation) Run(Random random, double ofView, double ofPlace)
    {
        double[] places = [.. Enumerable.Range(0, Places).Select(_ => Normal.Sample(random, 0, 1) * ofPlace)];
        List<(int View, int Place, double[] Row, double Error)> sightings = [];
        for (int view = 0; view < Views; view++)
        {
            double shared = Normal.Sample(random, 0, 1) * ofView;
            for (int k = 0; k < Sightings; k++)
            {
                int place = random.Next(Places);
                sightings.Add((view, place, [1, (place + 0.5 - (Places / 2.0)) / Places * 3], shared + places[place] + Normal.Sample(random, 0, 1)));
            }
        }

        Matrix<double> normal = Matrix<double>.Build.Dense(2, 2);
        Vector<double> right = Vector<double>.Build.Dense(2);
        foreach ((_, _, double[] row, double error) in sightings)
        {
            Vector<double> r = Vector<double>.Build.Dense(row);
            normal += r.OuterProduct(r);
            right += error * r;
        }

        Matrix<double> inverse = normal.Inverse();
        Vector<double> found = inverse * right;
        double[] residuals = [.. sightings.Select(s => s.Error - (found[0] * s.Row[0]) - (found[1] * s.Row[1]))];
        double unit = residuals.Sum(r => r * r) / (residuals.Length - 2);
        SharedErrors errors = new(inverse, 2, unit);
        foreach (((int view, int place, double[] row, _), double residual) in sightings.Zip(residuals))
            errors.Add(view, place, row, 1, residual);
        return ([found[0], found[1]], [inverse[0, 0] * unit, inverse[1, 1] * unit], errors.Inflation());
    }
}
