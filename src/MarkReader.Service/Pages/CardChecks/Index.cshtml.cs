using MarkReader.Application.Cameras;
using MarkReader.Application.CardChecks;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Pages.CardChecks;

/// <summary>Photos of a printed card in, for a check; and the checks that are kept.</summary>
/// <remarks>The form works without scripts. It carries no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class CardChecksModel(CardCheckStore checks, CameraStore cameras, CardCheckDispatch dispatch, HeldPhotos held, Figures figures) : PhotoSetModel<KeptCardCheck>(held, figures)
{
    private const int Shown = 20;

    private long? _camera;

    /// <summary>Those in use come first.</summary>
    public IReadOnlyList<KeptCamera> Cameras { get; private set; } = [];

    public IReadOnlyList<KeptCardCheck> Checks { get; private set; } = [];

    public string? Next { get; private set; }

    public override string? Text(string field) => base.Text(field) ?? (field == "camera" && _camera is { } camera ? Words.Plain(camera) : null);

    public void OnGet(long? camera, long? before)
    {
        _camera = camera;
        Show(before);
    }

    protected override Task<(KeptCardCheck? Kept, FieldFailure? Wrong)> KeepAsync(UploadForm form, IReadOnlyList<IFormFile> photos) =>
        dispatch.SendAsync(form, photos, form.Text("key"), HttpContext.RequestAborted);

    protected override string AddressOf(KeptCardCheck kept) => FormattableString.Invariant($"/cameras/card-checks/{kept.Id}?made=1");

    protected override void List(long? before)
    {
        if (cameras.All().TryGet(out KeptCameras? all, out Failure? failure) && checks.List(before, Shown).TryGet(out Page<KeptCardCheck>? page, out failure))
            (Cameras, Checks, Next) = ([.. all.InUse, .. all.NotInUse], page.Items, page.Next);
        else
            Failure = failure;
    }
}
