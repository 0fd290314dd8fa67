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
internal sealed class InterimModel(InterimStore sets, InterimDispatch dispatch) : PageModel
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

    /// <summary>The name that was typed, else the usual one.</summary>
    public string Name => _name ?? dispatch.UsualName;

    public Failure? WrongIn(string field) => _wrong?.Field == field ? _wrong.Failure : null;

    public void OnGet() => Show();

    public async Task<IActionResult> OnPostAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(new("photos", failure));
        _name = form.Text("name");
        (KeptInterimSet? set, FieldFailure? wrong) = await dispatch.KeepAsync(form, form.Text("key"), HttpContext.RequestAborted);
        return set is not null ? Redirect(FormattableString.Invariant($"/interim/{set.Id}?done=1")) : Refuse(wrong!);
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
        if (sets.List(null, InterimStore.Most).TryGet(out Page<KeptInterimSet>? page, out Failure? failure))
            Sets = page.Items;
        else
            Failure = failure;
    }
}
