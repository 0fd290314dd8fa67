using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Application.Measuring;
using MarkReader.Application.Texts;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>From the photos of a leg to its aim point.</summary>
public static class FindAim
{
    /// <summary>Checks the leg's numbers before the photos, which take longer. Calls may run at the same time.</summary>
    /// <param name="options">How to measure; with a debug folder, its subfolders near and far take the pictures of two photos.</param>
    public static Outcome<AimFinding> Run(AimPhotos photos, LegInput leg, MeasureOptions? options = null)
    {
        if (!CheckedLeg.From(leg).TryGet(out CheckedLeg? sound, out Failure? failure))
            return failure;
        return photos switch
        {
            AimPhotos.NearAndFar two => FromTwo(two, sound, options),
            AimPhotos.Both one => FromOne(one, sound, options),
            AimPhotos.BothNamed one => FromNamed(one, sound, options),
            _ => throw new ArgumentException("Unknown kind of photos.", nameof(photos)),
        };
    }

    private static Outcome<AimFinding> FromTwo(AimPhotos.NearAndFar photos, CheckedLeg leg, MeasureOptions? options)
    {
        if (photos.Near.Span.SequenceEqual(photos.Far.Span) && !photos.Near.IsEmpty)
            return new Failure(AimFailures.SamePhoto, InputTexts.Get("findAim.nearAndFarPhotoSame"), InputTexts.Get("findAim.takeOnePhotoAfterNear"));
        if (!MeasurePhoto.Run(photos.Near, At(Under(options, "near"), photos.NearAt)).TryGet(out PhotoMeasurement? near, out Failure? failure))
            return Of(InputTexts.Get("findAim.nearPhoto"), failure);
        if (!MeasurePhoto.Run(photos.Far, At(Under(options, "far"), photos.FarAt)).TryGet(out PhotoMeasurement? far, out failure))
            return Of(InputTexts.Get("findAim.farPhoto"), failure);
        if (!MarkChoice.NearAndFar(near, far).TryGet(out ChosenMarks? marks, out failure))
            return failure;
        return Solve(leg, marks, options, far, near);
    }

    private static Outcome<AimFinding> FromOne(AimPhotos.Both photos, CheckedLeg leg, MeasureOptions? options)
    {
        if (!MeasurePhoto.Run(photos.Photo, options).TryGet(out PhotoMeasurement? photo, out Failure? failure))
            return failure;
        if (!MarkChoice.OnePhoto(photo, photos.First).TryGet(out ChosenMarks? marks, out failure))
            return failure;
        return Solve(leg, marks, options, photo, null);
    }

    private static Outcome<AimFinding> FromNamed(AimPhotos.BothNamed photos, CheckedLeg leg, MeasureOptions? options)
    {
        if (!MeasurePhoto.Run(photos.Photo, At(options, photos.NearAt, photos.FarAt)).TryGet(out PhotoMeasurement? photo, out Failure? failure))
            return failure;
        if (!MarkChoice.Named(photo, photos.NearAt, photos.FarAt).TryGet(out ChosenMarks? marks, out failure))
            return failure;
        return Solve(leg, marks, options, photo, null);
    }

    private static Outcome<AimFinding> Solve(CheckedLeg leg, ChosenMarks marks, MeasureOptions? options, PhotoMeasurement farView, PhotoMeasurement? nearView)
    {
        TapeHeight tape = options?.Tape ?? TapeHeight.OnCard;
        Observation[] observations =
        [
            MarkErrorsOf.Observation(leg.Near, marks.Near, (nearView ?? farView).Camera, tape),
            MarkErrorsOf.Observation(leg.Far, marks.Far, farView.Camera, tape),
        ];
        if (!AimSolver.Solve(leg.Leg, observations).TryGet(out AimSolution? solution, out Failure? failure))
            return failure;
        IEnumerable<Warning> ofPhotos = nearView is null
            ? farView.Warnings
            : [.. nearView.Warnings.Select(w => Of(InputTexts.Get("findAim.nearPhoto2"), w)), .. farView.Warnings.Select(w => Of(InputTexts.Get("findAim.farPhoto2"), w))];
        return new AimFinding(leg, marks.Near, marks.Far, solution, farView, nearView, [.. ofPhotos, .. marks.Warnings, .. solution.Warnings]);
    }

    private static MeasureOptions? Under(MeasureOptions? options, string name) =>
        options?.DebugDirectory is { } directory ? options with { DebugDirectory = Path.Combine(directory, name) } : options;

    private static MeasureOptions? At(MeasureOptions? options, params PixelPoint?[] places)
    {
        PixelPoint[] taps = [.. places.OfType<PixelPoint>()];
        return taps.Length == 0 ? options : (options ?? new MeasureOptions()) with { Taps = taps };
    }

    /// <summary>Whether a refusal is about the near photo alone.</summary>
    public static bool IsAboutNear(Failure failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        return failure.Code == AimFailures.NearMarkUnclear || failure.Message.StartsWith(InputTexts.Get("findAim.nearPhoto"), StringComparison.Ordinal);
    }

    private static Failure Of(string photo, Failure failure) => failure with { Message = $"{photo}: {failure.Message}" };

    private static Warning Of(string photo, Warning warning) => warning with { Message = $"{photo}: {warning.Message}" };
}
