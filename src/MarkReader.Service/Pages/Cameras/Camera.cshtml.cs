using System.Text.RegularExpressions;
using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Cameras;

/// <summary>One camera: what its calibration found, how sure it is, and which photos are measured with it.</summary>
/// <remarks>Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed partial class CameraModel(CameraStore cameras, CalibrationStore calibrations) : PageModel
{
    public KeptCamera Camera { get; private set; } = null!;

    public CameraFigures Figures { get; private set; } = null!;

    public CameraUse Use { get; private set; }

    /// <summary>Whether it was made or taken in just now.</summary>
    public bool Made { get; private set; }

    /// <summary>Whether a file that was taken in just now holds the same.</summary>
    public bool WasThere { get; private set; }

    /// <summary>Name of the camera that is used for photos of the same lens.</summary>
    public string UsedFor { get; private set; } = "";

    /// <summary>Number of the calibration that gave it; null when none is kept.</summary>
    public long? Calibration { get; private set; }

    /// <summary>Why it was not deleted.</summary>
    public Failure? Wrong { get; private set; }

    /// <summary>Photos that were sent for it.</summary>
    public int Sent => Camera.Report is { } report ? report.Views.Count + report.Dropped.Count + report.Refused.Count : Camera.Profile.Views;

    /// <summary>Photos that would make it surer, in words.</summary>
    public IReadOnlyList<string> Missing => [.. (Camera.Report?.Missing ?? []).Select(m => CameraWords.Need(Enum.Parse<ViewNeed>(m, ignoreCase: true)))];

    /// <summary>Terms of the model that the photos show.</summary>
    public string Kept => Terms(kept: true);

    /// <summary>Terms that they do not show.</summary>
    public string LeftOut => Terms(kept: false);

    /// <summary>The parameters that were left free.</summary>
    public IReadOnlyList<CameraParameterReport> Parameters => [.. (Camera.Report?.Parameters ?? CameraFigures.ParametersOf(Camera.Profile)).Where(p => p.StandardUncertainty > 0)];

    public string FileName => Unsafe().Replace(Camera.Name, "-") + ".json";

    public IActionResult OnGet(long id, int made, int there)
    {
        WasThere = there == 1;
        return Show(id, made == 1);
    }

    public IActionResult OnPostDelete(long id, long version)
    {
        if (cameras.Remove(id, ExpectedVersion.OneOf(version)).TryGet(out _, out Failure? failure))
            return Redirect("/cameras");
        Wrong = failure;
        IActionResult page = Show(id, false);
        if (page is PageResult)
            Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return page;
    }

    private IActionResult Show(long id, bool made)
    {
        if (!cameras.Find(id).TryGet(out KeptCamera? camera, out _) || !cameras.All().TryGet(out KeptCameras? all, out _))
            return NotFound();
        (Camera, Figures, Use, Made, UsedFor) = (camera, CameraFigures.Of(camera.Profile), all.UseOf(camera), made, all.UsedFor(camera).Name);
        if (calibrations.List(null, CalibrationStore.Most).TryGet(out Page<CalibrationEntry>? begun, out _))
            Calibration = begun.Items.FirstOrDefault(c => c.CameraId == id)?.Id;
        return Page();
    }

    private string Terms(bool kept) => string.Join(", ", (Camera.Report?.Terms ?? []).Where(t => t.Kept == kept).Select(t => CameraWords.Term(Enum.Parse<CameraTerms>(t.Term, ignoreCase: true))));

    [GeneratedRegex(@"[^\p{L}\p{Nd}_.-]", RegexOptions.CultureInvariant)]
    private static partial Regex Unsafe();
}
