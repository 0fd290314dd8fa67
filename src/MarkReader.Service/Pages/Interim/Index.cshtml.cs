using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Interim;

/// <summary>The sets of reference photos that are kept, how each stands with this version of the program, and a form for another.</summary>
/// <remarks>The form works without scripts. It carries no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class InterimModel(InterimStore sets, InterimDispatch dispatch, HeldPhotos held) : PageModel
{
    private string? _name;
    private FieldFailure? _wrong;

    /// <summary>All of them.</summary>
    public IReadOnlyList<KeptInterimSet> Sets { get; private set; } = [];

    /// <summary>How many of them this version has not measured yet.</summary>
    public int Due => Sets.Count(s => s.StateFor(ProgramVersion.Current) == InterimState.Due);

    /// <summary>What is wrong with the list.</summary>
    public Failure? Failure { get; private set; }

    /// <summary>A form that is sent twice keeps one set.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    /// <summary>Photos of a form that was refused; null when there are none.</summary>
    public HeldSet? Held { get; private set; }

    /// <summary>The name that was typed, else the usual one.</summary>
    public string Name => _name ?? dispatch.UsualName;

    public Failure? WrongIn(string field) => _wrong?.Field == field ? _wrong.Failure : null;

    public void OnGet() => Show();

    public async Task<IActionResult> OnPostAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(new("photos", failure));
        _name = form.Text("name");
        FormPhotos photos = FormPhotos.Of(HttpContext, form, held);
        (KeptInterimSet? set, FieldFailure? wrong) = photos.Gone is { } gone
            ? (null, new FieldFailure("photos", gone))
            : await dispatch.KeepAsync(form, photos.All, form.Text("key"), HttpContext.RequestAborted);
        if (set is null)
        {
            Held = await photos.HoldAsync(photos.All);
            return Refuse(wrong!);
        }

        photos.LetGo();
        return Redirect(FormattableString.Invariant($"/interim/{set.Id}?done=1"));
    }

    private PageResult Refuse(FieldFailure wrong)
    {
        _wrong = wrong;
        Response.StatusCode = ProblemMap.StatusOf(wrong.Failure.Code);
        Show();
        return Page();
    }

    private void Show()
    {
        Held ??= HeldCookie.Read(Request, held) is [var there, ..] ? there : null;
        if (sets.List(null, InterimStore.Most).TryGet(out Page<KeptInterimSet>? page, out Failure? failure))
            Sets = page.Items;
        else
            Failure = failure;
    }
}
