using System.Globalization;
using System.Text;
using System.Text.Json;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Visits;

/// <summary>The visits that are kept, and where one begins.</summary>
/// <remarks>Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class VisitsModel(VisitStore visits, VisitStandings standings, MachineStore machines, TimeProvider clock) : PageModel
{
    private const int Shown = 20, MostSeeds = 1_000_000;

    // Up to this high or low at one corner, so that most of them have to be shimmed.
    private const double PractisedTwist = 3;

    private readonly Dictionary<string, string?> _texts = [];

    /// <summary>The visits of the page, and how each stands; null for one that cannot be used.</summary>
    public IReadOnlyList<(VisitEntry Visit, VisitStanding? Standing)> Visits { get; private set; } = [];

    public IReadOnlyList<MachineOverview> Machines { get; private set; } = [];

    public string? Next { get; private set; }

    public DateTimeOffset Now { get; } = clock.GetUtcNow();

    /// <summary>The machine that the form shows first.</summary>
    public long? Chosen { get; private set; }

    public Failure? Wrong { get; private set; }

    public Failure? WrongPractice { get; private set; }

    public string Key { get; } = Guid.NewGuid().ToString("N");

    public string Seed { get; } = Random.Shared.Next(MostSeeds).ToString(CultureInfo.InvariantCulture);

    public string? Text(string field) => _texts.GetValueOrDefault(field);

    public void OnGet(long? before, long? machine) => Read(before, machine);

    public IActionResult OnPostBegin(long machine, string? doneBy, string? note, string? key)
    {
        _texts["doneBy"] = doneBy;
        _texts["note"] = note;
        if (Begin(new { machine, note = note ?? "", doneBy = doneBy ?? "" }, key).TryGet(out KeptVisit? visit, out Failure? failure))
            return Go(visit);
        Wrong = failure;
        return Refused(failure, machine);
    }

    public IActionResult OnPostPractise(string? seed, string? twist, string? key)
    {
        _texts["seed"] = seed;
        Failure? failure = new(ServiceFailures.FieldInvalid, ServiceTexts.Get("index.numberPracticeMachineNotWhole"), ServiceTexts.Get("index.writeOneForExample"));
        if (int.TryParse(seed?.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && Begin(new { practice = new { seed = number, twist = twist is null ? 0 : PractisedTwist } }, key).TryGet(out KeptVisit? visit, out failure))
            return Go(visit);
        WrongPractice = failure;
        return Refused(failure!, null);
    }

    private Outcome<KeptVisit> Begin(object beginning, string? key)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(JsonSerializer.Serialize(beginning));
        RequestKey? request = null;
        if (!VisitBeginning.Read(bytes).TryGet(out VisitBeginning? read, out Failure? failure) || (key is { Length: > 0 } && !RequestKey.Of(key, bytes).TryGet(out request, out failure)))
            return failure;
        return visits.Begin(read, request);
    }

    /// <summary>The sign and the word for how a visit stands, as its steps have them.</summary>
    internal static string Sign(VisitStanding standing) => standing switch
    {
        VisitStanding.Within => "within",
        VisitStanding.Outside => "outside",
        VisitStanding.Undecided => "undecided",
        VisitStanding.DoneWithSkips => "skipped",
        VisitStanding.Stopped => "stale",
        _ => "now",
    };

    private static RedirectResult Go(KeptVisit visit) => new(string.Create(CultureInfo.InvariantCulture, $"/visits/{visit.Entry.Id}"));

    private PageResult Refused(Failure failure, long? machine)
    {
        Read(null, machine);
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return Page();
    }

    private void Read(long? before, long? machine)
    {
        Chosen = machine;
        Machines = machines.Overview(null, Page<MachineOverview>.Limit).TryGet(out Page<MachineOverview>? kept, out _) ? kept.Items : [];
        if (visits.List(before, Shown).TryGet(out Page<VisitEntry>? page, out _))
            (Visits, Next) = ([.. page.Items.Select(visit => (visit, standings.Of(visit)))], page.Next);
    }
}
