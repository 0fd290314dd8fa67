using MarkReader.Cameras.Boards;

namespace MarkReader.Cameras.Calibration;

/// <summary>All parameters of a calibration: the shared ones, each view's pose and growth of black.</summary>
internal sealed record CalibrationState(Globals Shared, IReadOnlyList<BoardPose> Poses, IReadOnlyList<GrowthField> Growths, IReadOnlyDictionary<int, double> Faults)
{
    /// <summary>How far the sighting's printed edge is out of its place, mm.</summary>
    public double FaultOf(BoardSighting s) => s.IsEdge ? Faults.GetValueOrDefault(s.Group) : 0;

    /// <summary>Residuals of every sighting, view by view, px.</summary>
    public double[][] Residuals(IReadOnlyList<BoardView> views)
    {
        double[] shared = new double[Globals.Count], own = new double[SightingRow.OfView];
        return [.. views.Select((view, i) => view.Sightings.Select(s => SightingRow.Fill(s, Shared, Poses[i], Growths[i], FaultOf(s), shared, own)).ToArray())];
    }
}
