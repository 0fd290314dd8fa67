using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Interim;

/// <summary>One set of reference photos: the outcome, its photos with every mark before and now, and what can be done with it.</summary>
/// <remarks>The forms work without scripts. They carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class SetModel(InterimStore sets, InterimDesk desk, InterimDispatch dispatch, IStringLocalizer<InterimPageTexts> texts) : PageModel
{
    private (string Form, Failure Failure)? _wrong;

    public KeptInterimSet Set { get; private set; } = null!;

    /// <summary>How it stands with this version.</summary>
    public InterimState State { get; private set; }

    /// <summary>What this version measured beside what was kept; null when it has not measured the set again.</summary>
    public InterimCheck? Check { get; private set; }

    /// <summary>Whether it was kept or measured just now.</summary>
    public bool Done { get; private set; }

    /// <summary>By which the progress is asked for; a result that is kept twice is kept once.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    public string Sign => SignOf(State);

    /// <summary>The state in a few words.</summary>
    public string Title => InterimWords.Short(State);

    /// <summary>The outcome in a sentence, without those words in front.</summary>
    public string Outcome => Check is { } check ? InterimWords.Outcome(check).ToString().Split(": ", 2)[^1]
        : State == InterimState.Kept ? texts["set.kept"] : texts["set.due", ProgramVersion.Current];

    /// <summary>The sign of a state, as verdicts have it.</summary>
    public static string SignOf(InterimState state) => state switch { InterimState.AsBefore => "fits", InterimState.Differs => "tooCoarse", _ => "undecided" };

    public Failure? WrongIn(string form) => _wrong is { } wrong && wrong.Form == form ? wrong.Failure : null;

    public IActionResult OnGet(long id, int done) => Show(id, done == 1);

    public async Task<IActionResult> OnPostMeasureAsync(long id, string? key)
    {
        (KeptInterimSet? set, FieldFailure? wrong) = await dispatch.MeasureAsync(id, key, HttpContext.RequestAborted);
        return set is not null ? Redirect(InterimAddress(id)) : Refuse(id, "measure", wrong!.Failure);
    }

    public IActionResult OnPostAnew(long id, string? key) =>
        RequestKey.Of(key ?? Key, InterimDispatch.Anew(id)).TryGet(out RequestKey? request, out Failure? failure) && desk.KeepAnew(id, request).TryGet(out KeptInterimSet? set, out failure)
            ? Redirect(InterimAddress(set.Id))
            : Refuse(id, "anew", failure);

    public IActionResult OnPostDelete(long id) => desk.Remove(id).TryGet(out _, out Failure? failure) ? Redirect("/interim") : Refuse(id, "delete", failure);

    private static string InterimAddress(long id) => FormattableString.Invariant($"/interim/{id}?done=1");

    private IActionResult Refuse(long id, string form, Failure failure)
    {
        _wrong = (form, failure);
        IActionResult page = Show(id, false);
        if (page is PageResult)
            Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return page;
    }

    private IActionResult Show(long id, bool done)
    {
        if (!sets.Find(id).TryGet(out KeptInterimSet? set, out _))
            return NotFound();
        (Set, State, Check, Done) = (set, set.StateFor(ProgramVersion.Current), set.CheckOf(ProgramVersion.Current), done);
        return Page();
    }
}
