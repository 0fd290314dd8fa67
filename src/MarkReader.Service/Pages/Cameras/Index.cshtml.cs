using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Cameras;

/// <summary>The cameras that are kept, calibrations that were begun, and a profile from a file.</summary>
/// <remarks>Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class CamerasModel(CameraStore cameras, CalibrationStore calibrations) : PageModel
{
    public KeptCameras Cameras { get; private set; } = new([]);

    /// <summary>Calibrations that have given no camera yet.</summary>
    public IReadOnlyList<CalibrationEntry> Begun { get; private set; } = [];

    /// <summary>A key for the form that begins a calibration.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    /// <summary>What is wrong with the lists, or why no calibration was begun.</summary>
    public Failure? Failure { get; private set; }

    /// <summary>What is wrong with the file that was sent.</summary>
    public Failure? FileWrong { get; private set; }

    /// <summary>The name that was typed for the file's camera.</summary>
    public string? Name { get; private set; }

    public void OnGet() => List();

    /// <summary>Begins a calibration; a form that is sent twice begins one, and an empty one that is there is opened instead.</summary>
    public IActionResult OnPostBegin(string? key)
    {
        if (RequestKey.Of(key ?? Key, []).TryGet(out RequestKey? request, out Failure? failure) && calibrations.Begin(request, reopen: true).TryGet(out KeptCalibration? begun, out failure))
            return Redirect(FormattableString.Invariant($"/cameras/calibrations/{begun.Entry.Id}"));
        List();
        Failure = failure;
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return Page();
    }

    /// <summary>Keeps the profile of a file, under the name that was typed or its own.</summary>
    public async Task<IActionResult> OnPostFileAsync()
    {
        if ((await ReadAsync()).TryGet(out CameraProfile? profile, out Failure? failure) && cameras.Add(profile).TryGet(out KeptCamera? camera, out failure))
            return Redirect(FormattableString.Invariant($"/cameras/{camera.Id}?{(camera.WasThere ? "there" : "made")}=1"));
        FileWrong = failure;
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        List();
        return Page();
    }

    private async Task<Outcome<CameraProfile>> ReadAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return failure;
        Name = form.Text("name");
        if (form.File("file") is not { } file)
            return new Failure(ServiceFailures.FieldMissing, ServiceTexts.Get("index.noFileWasChosen"), ServiceTexts.Get("cameras.chooseFile"));
        // One byte more than may be says enough.
        byte[] bytes = new byte[Math.Min(file.Length, CameraProfileFile.MostBytes + 1)];
        await using Stream stream = file.OpenReadStream();
        await stream.ReadExactlyAsync(bytes, HttpContext.RequestAborted);
        if (!CameraProfileFile.Read(bytes).TryGet(out CameraProfile? profile, out failure))
            return failure;
        return Name is not { } name ? profile : CalibrateCamera.CheckName(name) is { } wrong ? wrong : profile with { Name = name };
    }

    private void List()
    {
        if (cameras.All().TryGet(out KeptCameras? all, out Failure? failure) && calibrations.List(null, CalibrationStore.Most).TryGet(out Page<CalibrationEntry>? begun, out failure))
            (Cameras, Begun) = (all, [.. begun.Items.Where(c => c.CameraId is null)]);
        else
            Failure = failure;
    }
}
