using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>The results that are kept, a page at a time.</summary>
public sealed class ResultsModel(AimStore store) : PageModel
{
    private const int Shown = 20;

    public IReadOnlyList<KeptAim> Aims { get; private set; } = [];

    public string? Next { get; private set; }

    public Failure? Failure { get; private set; }

    public void OnGet(long? before)
    {
        if (store.List(before, Shown).TryGet(out Page<KeptAim>? page, out Failure? failure))
            (Aims, Next) = (page.Items, page.Next);
        else
            Failure = failure;
    }
}
