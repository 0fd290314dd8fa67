using System.Globalization;
using System.Text;
using MarkReader.Application.Machines;
using MarkReader.Application.Machines.Form;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Machines;

/// <summary>One machine: a new one, or one that is kept, to be looked at and changed.</summary>
/// <remarks>Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
[RequestFormLimits(ValueCountLimit = 256, ValueLengthLimit = 4096)]
internal sealed class EditModel(MachineStore machines, Figures figures) : PageModel
{
    private const string New = "new";

    private IReadOnlyDictionary<string, Failure> _wrong = new Dictionary<string, Failure>();
    private MachineForm? _now;
    private long _over;
    private string? _request;

    /// <summary>The machine as it is kept; null for a new one.</summary>
    public KeptMachine? Kept { get; private set; }

    public MachinePreset? Preset { get; private set; }

    public MachineForm Form { get; private set; } = null!;

    /// <summary>The figures with which the form was made; they stay while it goes to and fro.</summary>
    public Figures Figures { get; private set; } = figures;

    /// <summary>The version that the form was made from.</summary>
    public long Version { get; private set; }

    /// <summary>The machine was changed or deleted while the form was filled in.</summary>
    public Failure? Meanwhile { get; private set; }

    /// <summary>It has just been kept.</summary>
    public bool JustKept { get; private set; }

    /// <summary>A file name for the machine that is kept: letters and digits of its name.</summary>
    public string FileName
    {
        get
        {
            string name = string.Concat((Kept?.Entry.Name ?? "").Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Trim('-');
            return (name.Length == 0 ? "machine" : name) + ".json";
        }
    }

    public Failure? Wrong(string field) => _wrong.GetValueOrDefault(field);

    /// <summary>What is wrong, by field, in the order of the form.</summary>
    public IEnumerable<KeyValuePair<string, Failure>> AllWrong => _wrong;

    public bool AnyWrong => _wrong.Count > 0;

    /// <summary>Whether a group of rarely needed fields has something to look at.</summary>
    public bool Open(params string[] fields) => fields.Any(f => _wrong.ContainsKey(f) || Now(f) is not null);

    /// <summary>What is kept now in a field, when someone else's change made it differ.</summary>
    public string? Now(string field) => _now is { } now && now[field] != Form[field] ? now[field] : null;

    public FieldView Field(string name, string label, string unit = "", double? usual = null) => new(
        name, label, Form[name], unit, usual is { } value ? unit != Figures.Unit ? Words.Plain(value) : Figures.Field(value) : null, Wrong(name), Now(name));

    public FieldView Length(string name, string label, double? usual = null) => Field(name, label, Figures.Unit, usual);

    public IActionResult OnGet()
    {
        if (!Find())
            return NotFound();
        (Version, JustKept) = (Kept?.Entry.Version ?? 0, Request.Query.ContainsKey("kept"));
        Form = MachineForm.Of(Basis, Texts);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (await TakeSentAsync() is { } unreadable)
            return Unreadable(unreadable);
        if (!Find())
            return Gone();
        // Keeping it over someone else's change asks for the version that was seen beside the fields.
        long seen = Math.Max(Version, _over);
        if (Kept is { } old && seen != old.Entry.Version)
            return ChangedMeanwhile();
        (MachineDocument? document, _wrong) = Form.Apply(Basis);
        if (document is null)
            return Refused(_wrong.Values.First());
        Outcome<KeptMachine> done = Kept is null ? Add(document) : machines.Replace(Kept.Entry.Id, document, ExpectedVersion.OneOf(seen));
        if (done.TryGet(out KeptMachine? kept, out Failure? failure))
            return Redirect(FormattableString.Invariant($"/machines/{kept.Entry.Id}?kept={kept.Entry.Version}"));
        if (failure.Code == StorageFailures.Changed || failure.Code == StorageFailures.NotKept)
            return Find() ? ChangedMeanwhile() : Gone();
        _wrong = new Dictionary<string, Failure> { ["form"] = failure };
        return Refused(failure);
    }

    public async Task<IActionResult> OnPostDeleteAsync()
    {
        if (await TakeSentAsync() is { } unreadable)
            return Unreadable(unreadable);
        if (!Find() || Kept is null)
            return Redirect("/machines");
        if (machines.Remove(Kept.Entry.Id, ExpectedVersion.OneOf(Version)).TryGet(out _, out Failure? failure) || failure.Code == StorageFailures.NotKept)
            return Redirect("/machines");
        Form = MachineForm.Of(Basis, Texts);
        (Version, Meanwhile) = (Kept.Entry.Version, failure);
        return Refused(failure);
    }

    // Read here: the values of a handler are not bound when the form cannot be read.
    private string? Which => RouteData.Values["which"]?.ToString();

    /// <summary>Text of the document that the form is made from.</summary>
    private string Basis => Kept?.Text ?? Preset?.Text ?? MachineForm.Blank;

    private LengthTexts Texts => new(
        Figures.Unit,
        Figures.Field,
        text => Figures.ReadMillimetres(text).TryGet(out TypedLength? typed, out Failure? failure) ? new Application.Inputs.Number(typed.Millimetres) : failure);

    private bool Find()
    {
        if (Which == New)
        {
            string? preset = Request.Query["preset"];
            return (Preset = PresetKey.Find(preset)) is not null || preset is null;
        }

        Kept = long.TryParse(Which, NumberStyles.None, CultureInfo.InvariantCulture, out long id) && machines.Find(id).TryGet(out KeptMachine? kept, out _) ? kept : null;
        return Kept is not null;
    }

    /// <returns>What is wrong with the request, else null.</returns>
    private async Task<Failure?> TakeSentAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return failure;
        // A unit that was changed on another page meanwhile does not change what was typed here.
        if (form.Text("display") is { } display)
            Figures = new(Preferences.Named(display));
        Form = MachineForm.Sent(form.Text, Texts);
        (Version, _over, _request) = (Number(form, "version"), Number(form, "over"), form.Text("request"));
        return null;
    }

    private static long Number(UploadForm form, string field) => long.TryParse(form.Text(field), NumberStyles.None, CultureInfo.InvariantCulture, out long number) ? number : 0;

    private IActionResult Unreadable(Failure failure)
    {
        if (!Find())
            return NotFound();
        Form = MachineForm.Of(Basis, Texts);
        (Version, _wrong) = (Kept?.Entry.Version ?? 0, new Dictionary<string, Failure> { ["form"] = failure });
        return Refused(failure);
    }

    // Sent twice by an impatient hand, a form adds one machine; gone back to and changed, another.
    private Outcome<KeptMachine> Add(MachineDocument document)
    {
        _ = RequestKey.Of(_request, Encoding.UTF8.GetBytes(document.Text)).TryGet(out RequestKey? request, out _);
        Outcome<KeptMachine> added = machines.Add(document, request);
        return added.TryGet(out _, out Failure? failure) || failure.Code != StorageFailures.KeyReused ? added : machines.Add(document);
    }

    private PageResult ChangedMeanwhile()
    {
        _now = MachineForm.Of(Kept!.Text, Texts);
        Meanwhile = new(StorageFailures.Changed, ServiceTexts.Word("edit.machineHasChangedMeanwhileAnd", Kept.Entry.Version), ServiceTexts.Get("edit.nothingWasOverwrittenWhatYou"));
        return Refused(Meanwhile);
    }

    private IActionResult Gone()
    {
        if (Which == New)
            return NotFound();
        Kept = null;
        Meanwhile = new(StorageFailures.NotKept, ServiceTexts.Get("edit.machineWasDeletedMeanwhile"), ServiceTexts.Get("edit.saveKeepWhatStandsHere"));
        return Refused(Meanwhile);
    }

    private PageResult Refused(Failure failure)
    {
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return Page();
    }
}
