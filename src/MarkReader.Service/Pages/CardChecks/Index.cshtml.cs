using MarkReader.Application.Cameras;
using MarkReader.Application.CardChecks;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.CardChecks;

/// <summary>Photos of a printed card in, for a check; and the checks that are kept.</summary>
/// <remarks>The form works without scripts. It carries no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class CardChecksModel(CardCheckStore checks, CameraStore cameras, CardCheckDispatch dispatch, HeldPhotos held, Figures figures) : PageModel
{
    private const int Shown = 20;

    private UploadForm? _form;
    private FieldFailure? _wrong;
    private long? _camera;

    /// <summary>Those in use come first.</summary>
    public IReadOnlyList<KeptCamera> Cameras { get; private set; } = [];

    public IReadOnlyList<KeptCardCheck> Checks { get; private set; } = [];

    public string? Next { get; private set; }

    /// <summary>What is wrong with the lists.</summary>
    public Failure? Failure { get; private set; }

    /// <summary>A form that came back stays in the unit in which it was typed.</summary>
    public Figures Figures { get; private set; } = figures;

    /// <summary>A form that is sent twice makes one check.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    /// <summary>Photos of a form that was refused; null when there are none.</summary>
    public HeldSet? Held { get; private set; }

    /// <summary>What was typed in a field.</summary>
    public string? Text(string field) => _form?.Text(field) ?? (field == "camera" && _camera is { } camera ? Words.Plain(camera) : null);

    public Failure? WrongIn(string field) => _wrong?.Field == field ? _wrong.Failure : null;

    public void OnGet(long? camera, long? before)
    {
        _camera = camera;
        Show(before);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(new("photos", failure));
        _form = form;
        if (form.Text("display") is { } typed)
            Figures = new(Preferences.Named(typed));
        FormPhotos photos = FormPhotos.Of(HttpContext, form, held);
        (KeptCardCheck? check, FieldFailure? wrong) = photos.Gone is { } gone
            ? (null, new FieldFailure("photos", gone))
            : await dispatch.SendAsync(form, photos.All, form.Text("key"), HttpContext.RequestAborted);
        if (check is null)
        {
            Held = await photos.HoldAsync(photos.All);
            return Refuse(wrong!);
        }

        photos.LetGo();
        return Redirect(FormattableString.Invariant($"/cameras/card-checks/{check.Id}?made=1"));
    }

    private PageResult Refuse(FieldFailure wrong)
    {
        _wrong = wrong;
        Response.StatusCode = ProblemMap.StatusOf(wrong.Failure.Code);
        Show(null);
        return Page();
    }

    private void Show(long? before)
    {
        Held ??= HeldCookie.Read(Request, held) is [var there, ..] ? there : null;
        if (cameras.All().TryGet(out KeptCameras? all, out Failure? failure) && checks.List(before, Shown).TryGet(out Page<KeptCardCheck>? page, out failure))
            (Cameras, Checks, Next) = ([.. all.InUse, .. all.NotInUse], page.Items, page.Next);
        else
            Failure = failure;
    }
}
