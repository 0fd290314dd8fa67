using MarkReader.Cameras.Boards;

namespace MarkReader.Cameras.Calibration;

/// <summary>All parameters of a calibration: the shared ones, each view's pose and growth of black.</summary>
internal sealed record CalibrationState(Globals Shared, IReadOnlyList<BoardPose> Poses, IReadOnlyList<double> Growths)
{
    /// <summary>Residuals of every sighting, view by view, px.</summary>
    public double[][] Residuals(IReadOnlyList<BoardView> views)
    {
        double[] shared = new double[Globals.Count], own = new double[SightingRow.OfView];
        return [.. views.Select((view, i) => view.Sightings.Select(s => SightingRow.Fill(s, Shared, Poses[i], Growths[i], shared, own)).ToArray())];
    }
}
