using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>The first page: the steps from a printed card to the aim point.</summary>
[IgnoreAntiforgeryToken]
public sealed class IndexModel(AimStore aims) : PageModel
{
    public const int EarlierShown = 5;

    private readonly Dictionary<string, string?> _texts = new() { ["pathUncertainty"] = "1" };
    private readonly Dictionary<string, Failure> _wrong = [];

    /// <summary>Standard uncertainties of a path length, mm, as the form offers them.</summary>
    public static IReadOnlyList<(string Value, string Words)> Uncertainties { get; } =
    [
        ("0.5", "0.5 mm: good rule, both ends plain to see"),
        ("1", "1 mm: tape measure (usual)"),
        ("2", "2 mm: hard to reach"),
        ("5", "5 mm: estimated"),
    ];

    public bool HasSample => true;

    public bool Both => Text("shows") == "both";

    public bool AdvancedOpen => Text("incidenceDegrees") is not (null or "0") || Text("pivotOffset") is not (null or "0" or "")
        || Wrong("pivotOffset") is not null || Wrong("incidenceDegrees") is not null;

    public IReadOnlyList<KeptAim> Earlier { get; private set; } = [];

    public string? Text(string field) => _texts.GetValueOrDefault(field);

    public Failure? Wrong(string field) => _wrong.GetValueOrDefault(field);

    public PhotoSlot Slot(string name, string title, string words, string sign) => new(name, title, words, sign, Text(name + "Id"), Wrong(name));

    public void OnGet() => Earlier = aims.List(null, EarlierShown).TryGet(out Page<KeptAim>? page, out _) ? page.Items : [];
}
