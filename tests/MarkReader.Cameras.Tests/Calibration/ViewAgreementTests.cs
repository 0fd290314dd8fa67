using MarkReader.Cameras.Calibration;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Tests.Calibration;

public sealed class ViewAgreementTests
{
    private const int Views = 6, Edges = 60, Sections = 4, Sets = 400;

    // A straight line through each view's sections, fitted to all views; the errors of an edge's sections have half of their variance in common.
    [Fact]
    public void Of_views_that_agree_no_more_are_doubted_than_the_level_says()
    {
        double[] all = [.. Enumerable.Range(1, Sets).SelectMany(seed => Fit(seed, 0).Probabilities())];

        Assert.Equal(Views * Sets, all.Length);
        // Somewhat less, since a view's own parameters are counted, of which there are none here. 2400 views: 1 % is known to ±0.4 %, 5 % to ±0.9 % (twice the binomial's standard deviation).
        Assert.InRange(all.Count(p => p < 0.01) / (double)all.Length, 0.001, 0.014);
        Assert.InRange(all.Count(p => p < 0.05) / (double)all.Length, 0.015, 0.059);
    }

    [Fact]
    public void A_view_that_differs_by_what_single_views_may_is_not_doubted_more_often()
    {
        double[] all = [.. Enumerable.Range(1, Sets).SelectMany(seed => Fit(seed, 0, 0.2).Probabilities())];

        Assert.InRange(all.Count(p => p < 0.05) / (double)all.Length, 0.01, 0.059);
    }

    // Its slope is off by nine of its standard uncertainties.
    [Fact]
    public void The_view_with_a_slope_of_its_own_is_the_most_doubted()
    {
        int found = Enumerable.Range(1, 50).Count(seed => Fit(seed, 1.5).Probabilities() is var p && p[2] == p.Min() && p[2] < 0.001);

        Assert.InRange(found, 45, 50);
    }

    /// <param name="off">By how much the third view's slope is off.</param>
    /// <param name="own">Standard deviation of the views' own slopes, which is stated.</param>
    private static ViewAgreement Fit(int seed, double off, double own = 0)
    {
        Random random = new(seed);
        List<(int View, int Edge, double[] Row, double Value)> rows = [];
        Matrix<double> normal = Matrix<double>.Build.Dense(2, 2);
        Vector<double> right = Vector<double>.Build.Dense(2);
        for (int v = 0; v < Views; v++)
        {
            double slope = (v == 2 ? off : 0) + (own * Gauss());
            for (int e = 0; e < Edges; e++)
            {
                double common = Gauss();
                for (int s = 0; s < Sections; s++)
                {
                    double[] row = [1, (2 * random.NextDouble()) - 1];
                    double value = (slope * row[1]) + common + Gauss();
                    rows.Add((v, e, row, value));
                    Vector<double> d = Vector<double>.Build.Dense(row);
                    normal += d.OuterProduct(d);
                    right += value * d;
                }
            }
        }

        Vector<double> fitted = normal.Solve(right);
        ViewAgreement agreement = new(normal.Inverse(), [1], own > 0 ? [(1, own)] : []);
        foreach ((int view, int edge, double[] row, double value) in rows)
            agreement.Add(view, edge, row, 1, value - (fitted[0] * row[0]) - (fitted[1] * row[1]));
        return agreement;

        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
