using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;

namespace MarkReader.Service.Pages.Interim;

/// <summary>The sets of reference photos that are kept, how each stands with this version of the program, and a form for another.</summary>
/// <remarks>The form works without scripts. It carries no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class InterimModel(InterimStore sets, InterimDispatch dispatch, HeldPhotos held, Figures figures) : PhotoSetModel<KeptInterimSet>(held, figures)
{
    /// <summary>All of them.</summary>
    public IReadOnlyList<KeptInterimSet> Sets { get; private set; } = [];

    /// <summary>How many of them this version has not measured yet.</summary>
    public int Due => Sets.Count(s => s.StateFor(ProgramVersion.Current) == InterimState.Due);

    /// <summary>The name that was typed, else the usual one.</summary>
    public string Name => Text("name") ?? dispatch.UsualName;

    public void OnGet() => Show(null);

    protected override Task<(KeptInterimSet? Kept, FieldFailure? Wrong)> KeepAsync(UploadForm form, IReadOnlyList<IFormFile> photos) =>
        dispatch.KeepAsync(form, photos, form.Text("key"), HttpContext.RequestAborted);

    protected override string AddressOf(KeptInterimSet kept) => FormattableString.Invariant($"/interim/{kept.Id}?done=1");

    protected override void List(long? before)
    {
        if (sets.List(before, InterimStore.Most).TryGet(out Page<KeptInterimSet>? page, out Failure? failure))
            Sets = page.Items;
        else
            Failure = failure;
    }
}
