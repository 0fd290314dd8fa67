using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Texts;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Calibration;

/// <summary>From photos of a flat board to the camera that took them.</summary>
public static class CameraCalibration
{
    /// <summary>Three views fix focal length and principal point (Zhang, IEEE PAMI 22, 2000); two more let a bad one be told from the good.</summary>
    public const int LeastViews = 5;

    /// <summary>Leaves out photos that do not fit, then the terms that the photos do not show.</summary>
    /// <param name="views">All of one size.</param>
    public static Outcome<CalibratedCamera> Calibrate(IReadOnlyList<BoardView> views)
    {
        if (views.Count < LeastViews)
            return new Failure(CalibrationFailures.TooFewViews, CalibrationTexts.Word("cameraCalibration.photosBoardCanBeUsed", views.Count, LeastViews), CalibrationTexts.Get("cameraCalibration.takeMorePhotosBoardFrom"));
        if (PhotoSizes.Differ(views) is { } differ)
            return differ;
        if (Start(views) is not { } start
            || ViewScreen.Fit(views, start, LeastViews, some => new CalibrationFit(some, CameraTerms.All, robust: true)) is not { } screened
            || new ModelChoice(screened.Views).Simplest(screened.Fit) is not { } chosen)
        {
            return new Failure(CalibrationFailures.Undetermined, CalibrationTexts.Get("cameraCalibration.photosDoNotDetermineCamera"), CalibrationTexts.Get("cameraCalibration.takePhotosBoardTiltedAll"));
        }

        return Result(screened.Views, screened.Dropped, chosen.Fit, chosen.Evidence);
    }

    /// <summary>A plain least-squares fit of given terms to all sightings; for comparison with published results.</summary>
    internal static FittedCalibration? LeastSquares(IReadOnlyList<BoardView> views, CameraTerms terms) =>
        Start(views) is { } start ? new CalibrationFit(views, terms, robust: false).Run(start) : null;

    private static CalibrationState? Start(IReadOnlyList<BoardView> views)
    {
        if (CalibrationStart.Of(views) is not { } first)
            return null;
        CalibrationState state = new(new(first.Camera, BoardShape.Flat), first.Poses, [.. views.Select(v => GrowthField.None(v.Photo))], new Dictionary<int, double>());
        // The lens by steps, so that a wide one does not throw the fit off.
        return new CalibrationFit(views, CameraTerms.K1 | CameraTerms.K2 | CameraTerms.Spread, robust: false).Run(state)?.State;
    }

    private static CalibratedCamera Result(IReadOnlyList<BoardView> views, IReadOnlyList<DroppedView> dropped, FittedCalibration fit, IReadOnlyList<TermEvidence> evidence)
    {
        return new(fit.State.Shared.Camera, fit.State.Shared.Shape, fit.Covariance, fit.Terms, evidence, fit.ViewsOf(views), dropped, fit.ResidualPx);
    }
}
