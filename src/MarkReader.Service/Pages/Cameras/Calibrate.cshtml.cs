using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Cameras;

/// <summary>One calibration: print the board, photograph it, make the profile.</summary>
/// <remarks>Every form works without scripts. Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class CalibrateModel(
    CalibrationStore calibrations, CalibrationDesk desk, CameraStore cameras, MeasuringTurns turns, PhotoIntake intake, HeldPhotos held, IStringLocalizer<CalibrationTexts> texts) : FormsModel
{
    public KeptCalibration Calibration { get; private set; } = null!;

    public CalibrationStanding Standing { get; private set; } = null!;

    public CoverageView Coverage { get; private set; } = null!;

    /// <summary>The camera that it gave; null when it gave none yet.</summary>
    public KeptCamera? Camera { get; private set; }

    /// <summary>Photos that were not taken and can be sent again; null when there are none.</summary>
    public HeldSet? Held { get; private set; }

    /// <summary>The name that was typed, or that the camera has.</summary>
    public string? Name { get; private set; }

    /// <summary>Whether it was the name for which no profile was made.</summary>
    public bool NameIsWrong => WrongIn("make") is { } wrong && (wrong.Code == CameraFailures.NameInvalid || wrong.Code == CameraFailures.NameTaken);

    /// <summary>The next photo to take, in words.</summary>
    public string Next => texts["next." + (Standing.Missing.Count == 0 ? "None" : Standing.Used == 0 ? "First" : Standing.Missing[0].ToString()), BoardCoverage.EnoughViews];

    /// <summary>Whether a profile can be made.</summary>
    public string Ready => (Standing.CanFinish, Standing.Missing.Count) switch
    {
        (false, _) => texts["make.few", Standing.Used, CameraCalibration.LeastViews, BoardCoverage.EnoughViews],
        (true, 0) => texts["make.ready", Standing.Used],
        _ => texts["make.could", Standing.Used],
    };

    public IActionResult OnGet(long id) => Show(id);

    /// <summary>Photos from a form without scripts, one after the other.</summary>
    public async Task<IActionResult> OnPostPhotosAsync(long id)
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(id, "photos", failure);
        LeftPhotos? left = await intake.TakeAsync(HttpContext, form, "", (bytes, file) => desk.Add(id, bytes, file).TryGet(out _, out Failure? refused) ? null : refused);
        if (left is null)
            return Redirect(Address(id) + "#step-photos");
        Held = left.Held;
        return Refuse(id, "photos", left.Why);
    }

    public IActionResult OnPostRemove(long id, int number) => calibrations.RemovePhoto(id, number, ExpectedVersion.Any).TryGet(out _, out Failure? failure)
        ? Redirect(Address(id) + "#photo-list")
        : Refuse(id, "remove", failure);

    /// <summary>Makes the profile of the photos as they are now.</summary>
    public async Task<IActionResult> OnPostMakeAsync(long id, string? name)
    {
        Name = name?.Trim() ?? "";
        using IDisposable? turn = await turns.TakeTurnAsync(HttpContext.RequestAborted);
        if (turn is null)
            return Refuse(id, "make", Problem.TooManyWaiting("make").Failure);
        return desk.Finish(id, Name, ExpectedVersion.Any).TryGet(out KeptCamera? camera, out Failure? failure)
            ? Redirect(FormattableString.Invariant($"/cameras/{camera.Id}?made=1"))
            : Refuse(id, "make", failure);
    }

    public IActionResult OnPostDelete(long id) => calibrations.Remove(id, ExpectedVersion.Any).TryGet(out _, out Failure? failure) ? Redirect("/cameras") : Refuse(id, "remove", failure);

    private static string Address(long id) => FormattableString.Invariant($"/cameras/calibrations/{id}");

    protected override IActionResult Show(long id)
    {
        if (!calibrations.Find(id).TryGet(out KeptCalibration? calibration, out _))
            return NotFound();
        Calibration = calibration;
        Standing = CalibrationStanding.Of(calibration);
        Coverage = CoverageView.Of(Standing);
        if (calibration.Entry.CameraId is { } camera && cameras.Find(camera).TryGet(out KeptCamera? kept, out _))
            Camera = kept;
        Name ??= Camera?.Name;
        Held ??= HeldCookie.Read(Request, held) is [var there, ..] ? there : null;
        return Page();
    }
}
