using MarkReader.Cameras.Boards;
using MathNet.Numerics.Statistics;

namespace MarkReader.Cameras.Calibration;

/// <summary>Leaves out photos that do not fit the others: blurred, of another board, or with corners that were pulled off their places.</summary>
internal static class ViewScreen
{
    /// <summary>A photo goes whose residual, in stated uncertainties, is this many times the median photo's.</summary>
    private const double Most = 3;

    /// <summary>The share of photos that may go; more, and it is not known which are the good ones.</summary>
    private const double Share = 0.34;

    /// <param name="least">Views that must be left.</param>
    public static (FittedCalibration Fit, IReadOnlyList<BoardView> Views, IReadOnlyList<DroppedView> Dropped)? Fit(IReadOnlyList<BoardView> all, CalibrationState start, int least, Func<IReadOnlyList<BoardView>, CalibrationFit> fitting)
    {
        List<BoardView> views = [.. all];
        List<DroppedView> dropped = [];
        CalibrationState state = start;
        while (true)
        {
            if (fitting([.. views]).Run(state) is not { } fit)
                return null;
            double[] standard = [.. views.Select((v, i) => FittedCalibration.Rms([.. fit.Residuals[i].Select((r, k) => r / v.Sightings[k].StandardUncertainty)]))];
            int worst = Array.IndexOf(standard, standard.Max());
            if (standard[worst] <= Most * standard.Median() || dropped.Count + 1 > Share * all.Count || views.Count <= least)
                return (fit, views, dropped);
            double[] px = [.. fit.Residuals.Select(FittedCalibration.Rms)];
            dropped.Add(new(views[worst].Name, px[worst], px.Median()));
            views.RemoveAt(worst);
            state = new(fit.State.Shared, Without(fit.State.Poses, worst), Without(fit.State.Growths, worst), fit.State.Faults);
        }
    }

    private static IReadOnlyList<T> Without<T>(IReadOnlyList<T> list, int index) => [.. list.Where((_, i) => i != index)];
}
