using System.Globalization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Cameras;
using MarkReader.Application.Inputs;
using MarkReader.Application.Practising;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Visits;

/// <summary>A visit: what to do now, what was done, how it stands.</summary>
/// <remarks>
/// Every form works without scripts and carries the visit's version and a key of its own: what was meant for another state of the visit is refused and told, and
/// a form that is sent twice counts once. Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.
/// </remarks>
[IgnoreAntiforgeryToken]
internal sealed class VisitModel(
    VisitStore visits, VisitDesk desk, PhotoStore photos, PhotoDesk photoDesk, CameraStore cameras, MeasuringTurns turns, Figures figures, IStringLocalizer<VisitTexts> texts) : PageModel
{
    private readonly Dictionary<string, string?> _texts = [];

    public VisitView View { get; private set; } = null!;

    /// <summary>The photo whose mark is to be chosen; null when none was sent for the pulse that is asked for.</summary>
    public PickView? Pick { get; private set; }

    /// <summary>What is wrong with the form that was sent, and which form.</summary>
    public (string Form, Failure Failure)? Wrong { get; private set; }

    /// <summary>A key for each form of the page.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    /// <summary>Whether the visit was just taken in from a file: in, or before when it was here already.</summary>
    public string? Taken => Request.Query["taken"].ToString() is var taken and ("in" or "before") ? taken : null;

    /// <summary>What was typed, when the form comes back.</summary>
    public string? Text(string field) => _texts.GetValueOrDefault(field);

    /// <summary>What is wrong with a form that the page does not show beside it.</summary>
    public Failure? WrongElsewhere => Wrong is { } wrong && !(wrong.Form switch
    {
        "photo" => View.Action is { IsPulse: true } && Pick is null,
        "pick" => View.Action is { IsPulse: true } && Pick?.Found is not null,
        "tap" => View.Action is { IsPulse: true } && Pick is { CanTap: true },
        "typed" => View.Action is { IsPulse: true },
        "work" => View.Action is { IsWork: true },
        _ => false,
    }) ? wrong.Failure : null;

    /// <summary>Everything that was typed, when the form comes back.</summary>
    public string Typed => string.Join(", ", _texts.Where(t => !string.IsNullOrWhiteSpace(t.Value)).Select(t => $"{t.Key} {t.Value}"));

    public Failure? WrongIn(string form) => Wrong is { } wrong && wrong.Form == form ? wrong.Failure : null;

    /// <summary>With a place: the mark there is measured and shown, and entered only when the user says so.</summary>
    public async Task<IActionResult> OnGetAsync(long id, string? photo, string? x, string? y)
    {
        if (x is null && y is null)
            return Show(id, photo);
        if (!Place(x, y).TryGet(out Shown? place, out Failure? failure))
            return Refuse(id, "tap", failure, photo);
        using IDisposable? turn = await turns.TakeTurnAsync(HttpContext.RequestAborted);
        if (turn is null)
            return Refuse(id, "tap", Problem.TooManyWaiting("tap").Failure, photo);
        return ShownMark.Of(photos, cameras, photo ?? "", place.At).TryGet(out ShownMark? shown, out failure) ? Show(id, photo, shown) : Refuse(id, "tap", failure, photo);
    }

    /// <summary>A photo from a form without scripts: kept and measured, then shown.</summary>
    public async Task<IActionResult> OnPostPhotoAsync(long id)
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(id, "photo", failure, null);
        if (form.File("photo") is not { } file)
            return Refuse(id, "photo", new(ServiceFailures.FieldMissing, ServiceTexts.Get("visit.noPhotoWasChosen"), ServiceTexts.Get("visit.takeOrChooseOneFirst")), null);
        return await KeepAsync(id, await UploadForm.BytesAsync(file, HttpContext.RequestAborted));
    }

    /// <summary>Fires the pulse that is asked for on a practice machine and takes its photo.</summary>
    public async Task<IActionResult> OnPostPulseAsync(long id)
    {
        using IDisposable? turn = await turns.TakeTurnAsync(HttpContext.RequestAborted);
        if (turn is null)
            return Refuse(id, "photo", Problem.TooManyWaiting("photo").Failure, null);
        return visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure) && PracticePulses.Fire(visit).TryGet(out byte[]? photo, out failure)
            ? Measured(id, photo)
            : Refuse(id, "photo", failure!, null);
    }

    /// <summary>The mark that was chosen in a photo.</summary>
    public IActionResult OnPostMark(long id, string photo, int mark) => Pulse(id, "pick", photo, pulse => EventDraft.Photographed(pulse, photo, mark));

    /// <summary>A place in the photo that the user shows.</summary>
    public async Task<IActionResult> OnPostTapAsync(long id, string photo, string x, string y)
    {
        if (!Place(x, y).TryGet(out Shown? place, out Failure? failure))
            return Refuse(id, "tap", failure, photo);
        using IDisposable? turn = await turns.TakeTurnAsync(HttpContext.RequestAborted);
        return turn is null
            ? Refuse(id, "tap", Problem.TooManyWaiting("tap").Failure, photo)
            : Pulse(id, "tap", photo, pulse => EventDraft.Tapped(pulse, photo, place.At));
    }

    /// <summary>A mark that was read off by eye.</summary>
    public IActionResult OnPostTyped(long id, string u, string v, string uncertainty, string? photo, string? beside)
    {
        Keep(("u", u), ("v", v), ("uncertainty", uncertainty));
        if (!figures.ReadMillimetres(u).TryGet(out TypedLength? atU, out Failure? failure)
            || !figures.ReadMillimetres(v).TryGet(out TypedLength? atV, out failure)
            || !figures.ReadMillimetres(uncertainty).TryGet(out TypedLength? sure, out failure))
            return Refuse(id, "typed", failure, photo);
        CardPoint at = new(atU.Millimetres, atV.Millimetres);
        return WithAction(id, "typed", photo, action => beside is null && TypedMark.OffCard(action, at) is { } off
            ? Refuse(id, "typed", off, photo)
            : Pulse(id, "typed", photo, pulse => EventDraft.Typed(pulse, at, Length.FromMillimetres(sure.Millimetres))));
    }

    /// <summary>The work was done as it was asked for, or otherwise as was typed.</summary>
    public IActionResult OnPostWork(long id, string? turns, string? height, string? right, string? up)
    {
        Keep(("turns", turns), ("height", height), ("right", right), ("up", up));
        return WithAction(id, "work", null, action => WorkDone.Read(action, figures, turns, height, right, up).TryGet(out VisitAction? done, out Failure? failure)
            ? Append(id, "work", null, EventDraft.Done(done))
            : Refuse(id, "work", failure, null));
    }

    public IActionResult OnPostSkip(long id, string step, string? reason)
    {
        Keep(("reason", reason));
        return Append(id, "skip", null, EventDraft.Skip(step ?? "", reason ?? ""));
    }

    public IActionResult OnPostAgain(long id, string step) => Append(id, "again", null, EventDraft.Again(step ?? ""));

    public IActionResult OnPostBack(long id, int number) =>
        desk.TakeBack(id, number, Version()).TryGet(out _, out Failure? failure) ? Go(id) : Refuse(id, "back", failure, null);

    public IActionResult OnPostWords(long id, string? note, string? doneBy)
    {
        Keep(("note", note), ("doneBy", doneBy));
        return VisitDescription.Check(note ?? "", doneBy ?? "").TryGet(out VisitDescription? words, out Failure? failure) && visits.Describe(id, words, Version()).TryGet(out _, out failure)
            ? Go(id)
            : Refuse(id, "words", failure!, null);
    }

    public IActionResult OnPostDelete(long id) =>
        visits.Remove(id, Version()).TryGet(out _, out Failure? failure) ? Redirect("/visits") : Refuse(id, "delete", failure, null);

    private Outcome<Shown> Place(string? x, string? y)
    {
        Keep(("x", x), ("y", y));
        return NumberText.Read(x ?? "").TryGet(out Number? px, out Failure? failure) && NumberText.Read(y ?? "").TryGet(out Number? py, out failure)
            ? new Shown(new(px.Value, py.Value))
            : failure!;
    }

    private async Task<IActionResult> KeepAsync(long id, byte[] bytes)
    {
        using IDisposable? turn = await turns.TakeTurnAsync(HttpContext.RequestAborted);
        return turn is null ? Refuse(id, "photo", Problem.TooManyWaiting("photo").Failure, null) : Measured(id, bytes);
    }

    private IActionResult Measured(long id, byte[] bytes) =>
        photoDesk.Keep(bytes).TryGet(out PhotoReceipt? receipt, out Failure? failure) && photoDesk.Measure(receipt.Photo.Id).TryGet(out _, out failure)
            ? Redirect(string.Create(CultureInfo.InvariantCulture, $"/visits/{id}?photo={receipt.Photo.Id}"))
            : Refuse(id, "photo", failure!, null);

    private IActionResult Pulse(long id, string form, string? photo, Func<VisitAction, byte[]> draft) => WithAction(id, form, photo, action => action is VisitAction.Fire or VisitAction.Survey
        ? Append(id, form, photo, draft(action))
        : Refuse(id, form, VisitLogFailures.GoneOn(id), photo));

    // The action that the form was made for: that of the version which it carries.
    private IActionResult WithAction(long id, string form, string? photo, Func<VisitAction, IActionResult> next)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out _))
            return NotFound();
        return AdviseVisit.At(visit, FormVersion() ?? visit.Entry.Version).TryGet(out VisitAdvice? advice, out Failure? failure) ? next(advice.Action) : Refuse(id, form, failure, photo);
    }

    private IActionResult Append(long id, string form, string? photo, byte[] e) =>
        desk.Append(id, e, Field("key"), Version()).TryGet(out _, out Failure? failure) ? Go(id) : Refuse(id, form, failure, photo);

    private RedirectResult Go(long id) => Redirect(string.Create(CultureInfo.InvariantCulture, $"/visits/{id}"));

    private IActionResult Refuse(long id, string form, Failure failure, string? photo)
    {
        Wrong = (form, failure);
        IActionResult page = Show(id, photo);
        if (page is PageResult)
            Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return page;
    }

    private IActionResult Show(long id, string? photo, ShownMark? shown = null)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out _))
            return NotFound();
        View = VisitView.Of(visit, photos, texts, figures);
        if (photo is { Length: > 0 } && View is { Advice: { } advice, Action.IsPulse: true })
            Pick = PickView.Of(photos, visit, advice, photo) is { } pick ? pick with { Shown = shown } : null;
        return Page();
    }

    private void Keep(params (string Field, string? Text)[] typed)
    {
        foreach ((string field, string? text) in typed)
            _texts[field] = text;
    }

    private ExpectedVersion Version() => FormVersion() is { } version ? ExpectedVersion.OneOf(version) : ExpectedVersion.Any;

    private long? FormVersion() => long.TryParse(Field("version"), NumberStyles.None, CultureInfo.InvariantCulture, out long version) ? version : null;

    private string Field(string name) => Request.HasFormContentType ? Request.Form[name].ToString() : "";

    // A place in the photo, px.
    private sealed record Shown(PixelPoint At);
}
