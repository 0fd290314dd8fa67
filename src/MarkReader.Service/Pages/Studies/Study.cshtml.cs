using System.Globalization;
using System.Text;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Studies;

/// <summary>One study: its plan, its photos or its table, the result, and for pulses the machine that takes it.</summary>
/// <remarks>Every form works without scripts. Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
[RequestFormLimits(ValueLengthLimit = StudyStore.MostReadings, MultipartBodyLengthLimit = UploadForm.RequestLimit, ValueCountLimit = 64)]
internal sealed class StudyModel(
    StudyStore studies, StudyDesk desk, ScatterEntry entry, MachineStore machines, PhotoIntake intake, HeldPhotos held, Figures figures, IStringLocalizer<StudyPageTexts> texts) : FormsModel
{
    private const int UsualMarks = 5;

    private HeldSet? _left;
    private IReadOnlyList<HeldSet> _held = [];

    public KeptStudy Study { get; private set; } = null!;

    public StudyStanding Standing { get; private set; } = null!;

    /// <summary>The plan's fields, as they are or as they were typed.</summary>
    public StudyFields Fields { get; private set; } = null!;

    public IReadOnlyList<StudyPicture> Pictures { get; private set; } = [];

    /// <summary>Machines that can take the scatter.</summary>
    public IReadOnlyList<MachineEntry> Machines { get; private set; } = [];

    /// <summary>The machine that was chosen to take it; null while none is.</summary>
    public KeptMachine? Chosen { get; private set; }

    /// <summary>What that machine's visits reckon with now, mm; null when this version cannot read it.</summary>
    public double? ChosenNow => Chosen is { } machine ? ScatterEntry.Now(machine)?.Millimetres : null;

    /// <summary>The machine that has just taken it.</summary>
    public MachineEntry? Entered { get; private set; }

    /// <summary>The table that was typed and could not be used.</summary>
    public string? Typed { get; private set; }

    public bool TypedPerPhoto { get; private set; }

    /// <summary>Who takes photos; one without a name for pulses.</summary>
    public IReadOnlyList<string> Takers => Study.Setup.Kind == StudyKind.Marks ? Study.Setup.People : [""];

    public string PlanWords => Study.Readings is not null && TableWords is { } table ? table
        : Study.Setup.Kind == StudyKind.Marks
        ? texts["plan.marks", Study.Setup.People.Count, Study.Setup.Count, Study.Setup.Photos]
        : texts["plan.pulses", Study.Setup.Count];

    // The figures of a table that stands in place of the plan.
    private string? TableWords => Standing switch
    {
        { Marks.U.Study.Size: { } size } => texts["plan.table.marks", size.Operators, size.Parts, size.Repeats].Value,
        { Scatter: not null } => texts["plan.table.pulses", Standing.Pulses].Value,
        _ => null,
    };

    public IEnumerable<string> Rules
    {
        get
        {
            // They are for those who take photos.
            if (Study.Readings is not null)
                yield break;
            string part = StudySetupText.Name(Study.Setup.Kind);
            foreach (string rule in (string[])["first", "second", "third"])
                yield return texts[$"rule.{part}.{rule}"];
            if (StudyStanding.Expected(Study.Setup, UsualMarks) is { } planned)
                yield return texts["rule.expected", UsualMarks, figures.Number(planned.Factors.Low, 2), figures.Number(planned.Factors.High, 2)];
        }
    }

    /// <summary>What to do next, in words.</summary>
    public string Next
    {
        get
        {
            if (Study.Readings is not null)
                return texts["next.table"];
            if (Standing.Missing == 0)
                return texts["next.done"];
            return Study.Setup.Kind == StudyKind.Pulses
                ? texts["next.pulses", Standing.Missing]
                : texts["next.marks", Standing.People.First(p => p.Missing > 0).Name, Standing.People.First(p => p.Missing > 0).Missing];
        }
    }

    /// <summary>How far a person is: photos that are used, and wanted; of pulses, marks.</summary>
    public (int Done, int Wanted) ProgressOf(string person) => (person.Length > 0 ? Study.UsedOf(person) : Standing.Pulses, Study.Setup.Count);

    /// <summary>Photos of a person that were not taken and can be sent again; those of somebody who is no longer in the plan can be sent by everyone. Null when there are none.</summary>
    public HeldSet? HeldOf(string person) => _held.FirstOrDefault(s => s.Person == person) ?? _held.FirstOrDefault(s => !Takers.Contains(s.Person));

    /// <summary>With the version, so that a browser does not show an earlier one.</summary>
    public string AddressOf(StudyPicture picture) =>
        string.Create(CultureInfo.InvariantCulture, $"/api/studies/{Study.Entry.Id}/pictures/{picture.Name}.svg?version={Study.Entry.Version}&display={figures.Preferences.Name}");

    public IActionResult OnGet(long id, long? machine, long? entered)
    {
        IActionResult page = Show(id);
        if (page is not PageResult || Standing.Scatter is null)
            return page;
        if (machine is { } chosen && !Choose(chosen).TryGet(out _, out Failure? failure))
            return Refuse(id, "use", failure);
        if (entered is { } done && machines.Find(done).TryGet(out KeptMachine? kept, out _))
            Entered = kept.Entry;
        return page;
    }

    /// <summary>Changes the plan.</summary>
    public IActionResult OnPostPlan(long id)
    {
        if (!studies.Find(id).TryGet(out KeptStudy? study, out _))
            return NotFound();
        StudyFields typed = StudyFields.Of(study.Setup.Kind, Request.Form);
        if (typed.Read(study.Setup).TryGet(out StudySetup? setup, out Failure? failure) && studies.Describe(id, setup, ExpectedVersion.Any).TryGet(out _, out failure))
            return Redirect(Address(id) + "#step-plan");
        Fields = typed.Refused(failure);
        return Refuse(id, "plan", failure);
    }

    /// <summary>Photos from a form without scripts, one after the other.</summary>
    public async Task<IActionResult> OnPostPhotosAsync(long id)
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(id, "photos", failure);
        string person = form.Text("person") ?? "";
        LeftPhotos? left = await intake.TakeAsync(HttpContext, form, person, (bytes, file) =>
            desk.Add(id, person, bytes, file).TryGet(out StudyPhotoReceipt? receipt, out Failure? refused) ? receipt.Again : refused);
        if (left is null)
            return Redirect(Address(id) + "#step-photos");
        _left = left.Held;
        return Refuse(id, "photos", left.Why);
    }

    /// <summary>A table in place of photos: a file, else what was typed.</summary>
    public async Task<IActionResult> OnPostTableAsync(long id)
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(id, "table", failure);
        (Typed, TypedPerPhoto) = (form.Text("text"), form.Text("perPhoto") is not null);
        if (form.File("file") is { Length: > StudyStore.MostReadings })
            return Refuse(id, "table", UploadForm.TooLarge());
        byte[] bytes = form.File("file") is { } file ? await UploadForm.BytesAsync(file, HttpContext.RequestAborted) : Encoding.UTF8.GetBytes(Typed ?? "");
        return desk.Put(id, bytes, TypedPerPhoto, ExpectedVersion.Any).TryGet(out _, out failure) ? Redirect(Address(id) + "#result-title") : Refuse(id, "table", failure);
    }

    public IActionResult OnPostNoTable(long id) => studies.Put(id, null, ExpectedVersion.Any).TryGet(out _, out Failure? failure)
        ? Redirect(Address(id) + "#step-photos")
        : Refuse(id, "table", failure);

    public IActionResult OnPostRemove(long id, int number) => studies.RemovePhoto(id, number, ExpectedVersion.Any).TryGet(out _, out Failure? failure)
        ? Redirect(Address(id) + "#photo-list")
        : Refuse(id, "remove", failure);

    /// <summary>Enters the scatter in the machine as it was when it was chosen.</summary>
    public IActionResult OnPostUse(long id, long machine, long version) => entry.Enter(id, machine, ExpectedVersion.OneOf(version)).TryGet(out _, out Failure? failure)
        ? Redirect(FormattableString.Invariant($"{Address(id)}?entered={machine}#use-title"))
        : Refuse(id, "use", failure);

    public IActionResult OnPostDelete(long id) => studies.Remove(id, ExpectedVersion.Any).TryGet(out _, out Failure? failure) ? Redirect("/studies") : Refuse(id, "remove", failure);

    private static string Address(long id) => FormattableString.Invariant($"/studies/{id}");

    private Outcome<KeptMachine> Choose(long machine)
    {
        Outcome<KeptMachine> found = machines.Find(machine);
        Chosen = found.TryGet(out KeptMachine? kept, out _) ? kept : null;
        return found;
    }

    protected override IActionResult Show(long id)
    {
        if (!studies.Find(id).TryGet(out KeptStudy? study, out _))
            return NotFound();
        Study = study;
        Standing = StudyStanding.Of(study);
        IReadOnlyList<HeldSet> before = HeldCookie.Read(Request, held);
        _held = _left is null ? before : [_left, .. before.Where(s => s.Person != _left.Person)];
        Fields ??= StudyFields.Of(study.Setup, figures);
        Pictures = Standing.Marks is { } marks ? StudyPictures.Of(marks, figures.Record) : Standing.Scatter is { } scatter ? StudyPictures.Of(scatter, figures.Record) : [];
        if (Standing.Scatter is not null && machines.List(null, Page<MachineEntry>.Limit).TryGet(out Page<MachineEntry>? kept, out _))
            Machines = kept.Items;
        return Page();
    }
}
