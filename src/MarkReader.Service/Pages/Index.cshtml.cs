using System.Globalization;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Samples;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>The first page: the steps from a printed card to the aim point.</summary>
/// <remarks>
/// Its form works without scripts too: then the page comes back whole, with what was entered and what is wrong.
/// Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.
/// </remarks>
[IgnoreAntiforgeryToken]
internal sealed class IndexModel(AimStore aims, PhotoDesk photos, AimDesk desk, AimDispatch dispatch, MeasuringTurns turns, SampleSet samples, Figures figures) : PageModel
{
    private const int EarlierShown = 5;

    private static readonly string[] s_fields =
        [
            "shows", "first", "nearPath", "farPath", "unit", "pathUncertainty", "incidenceDegrees", "pivotOffset", "nearId", "farId", "photoId",
            "nearAt", "farAt", "photoNearAt", "photoFarAt", "rulerU", "rulerV", "rulerUncertainty", "tapeHeight", "tapeHeightUncertainty",
        ];

    private readonly Dictionary<string, string?> _texts = new() { ["pathUncertainty"] = "1" };
    private readonly Dictionary<string, Failure> _wrong = [];

    /// <summary>Standard uncertainties of a path length, mm, as the form offers them.</summary>
    public static IReadOnlyList<string> Uncertainties { get; } = ["0.5", "1", "2", "5"];

    /// <summary>How lengths are shown and typed on the form.</summary>
    public Figures Figures { get; private set; } = figures;

    public bool HasSample => samples.Pairs.Count > 0;

    public bool Both => Text("shows") == "both";

    public bool AdvancedOpen => Text("incidenceDegrees") is not (null or "0") || Text("pivotOffset") is not null
        || Wrong("pivotOffset") is not null || Wrong("incidenceDegrees") is not null;

    public CardReadingsView CardReadings => new("", Figures, Text, Wrong);

    public IReadOnlyList<KeptAim> Earlier { get; private set; } = [];

    /// <summary>One of <see cref="Uncertainties"/> as a number.</summary>
    public static double Millimetres(string uncertainty) => double.Parse(uncertainty, CultureInfo.InvariantCulture);

    public string? Text(string field) => _texts.GetValueOrDefault(field);

    public Failure? Wrong(string field) => _wrong.GetValueOrDefault(field);

    public PhotoSlot Slot(string name, string title, string words, string sign) => new(name, title, words, sign, Text(name + "Id"), Wrong(name))
    {
        Marks = name == "photo"
            ? [new("photoNearAt", "near", Text("photoNearAt"), Wrong("photoNearAt")), new("photoFarAt", "far", Text("photoFarAt"), Wrong("photoFarAt"))]
            : [new(name + "At", name, Text(name + "At"), Wrong(name + "At"))],
    };

    public void OnGet() => ListEarlier();

    /// <summary>The list of earlier results alone, for a page that is open already.</summary>
    public IActionResult OnGetEarlier()
    {
        ListEarlier();
        return Partial("_ResultList", Earlier);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        ListEarlier();
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refused(new FieldFailure("form", failure));
        // A unit that was changed on another page meanwhile does not change what was typed here.
        if (form.Text("display") is { } display)
            Figures = new(Preferences.Named(display));
        foreach (string field in s_fields)
            _texts[field] = form.Text(field) ?? _texts.GetValueOrDefault(field);
        if (await dispatch.RunAsync(form, HttpContext.RequestAborted) is not { } done)
            return Refused(Problems.Problem.TooManyWaiting("form"));
        foreach ((string field, string id) in done.PhotoIds)
            _texts[field + "Id"] = id;
        return done.Failures.Count > 0 ? Refused([.. done.Failures]) : Result(done.Receipt!);
    }

    /// <summary>The sample, worked out at once.</summary>
    public async Task<IActionResult> OnPostSampleAsync()
    {
        ListEarlier();
        using IDisposable? turn = await turns.TakeTurnAsync(HttpContext.RequestAborted);
        if (turn is null)
            return Refused(Problems.Problem.TooManyWaiting("form"));
        SamplePair sample = samples.Pairs[0];
        if (!Keep(sample.Near).TryGet(out PhotoReceipt? near, out Failure? failure)
            || !Keep(sample.Far).TryGet(out PhotoReceipt? far, out failure)
            || !desk.Find(new(near.Photo.Id, far.Photo.Id, null, new(sample.NearPath, sample.FarPath))).TryGet(out AimReceipt? receipt, out failure))
            return Refused(new FieldFailure("form", failure));
        return Result(receipt);
    }

    private Outcome<PhotoReceipt> Keep(string address) => photos.Keep(System.IO.File.ReadAllBytes(samples.PathOf(Path.GetFileName(address))!));

    private RedirectToPageResult Result(AimReceipt receipt) => RedirectToPage("/Result", new { id = receipt.Kept.Id });

    private PageResult Refused(params FieldFailure[] failures)
    {
        foreach (FieldFailure one in failures.Reverse())
            _wrong[s_fields.Contains(one.Field) || one.Field is "near" or "far" or "photo" ? one.Field : "form"] = one.Failure;
        Response.StatusCode = Problems.ProblemMap.StatusOf(failures[0].Failure.Code);
        return Page();
    }

    private void ListEarlier() => Earlier = aims.List(null, EarlierShown).TryGet(out Page<KeptAim>? page, out _) ? page.Items : [];
}
