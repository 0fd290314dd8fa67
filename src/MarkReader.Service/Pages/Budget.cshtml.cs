using MarkReader.Application.Budgets;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Service.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>A result's uncertainty, explained to a person who has never seen a budget.</summary>
public sealed class BudgetModel(AimStore aims) : PageModel
{
    public AimView View { get; private set; } = null!;

    public ExplainedBudget Words { get; private set; } = null!;

    /// <summary>How numbers are written.</summary>
    public RecordFormat Format { get; private set; } = RecordFormat.Plain;

    /// <summary>The parts that are worth a bar.</summary>
    public BudgetView Bars { get; private set; } = null!;

    public IActionResult OnGet(long id)
    {
        Format = Preferences.Read(Request).Format;
        if (!aims.Find(id).TryGet(out KeptAim? kept, out _))
            return NotFound();
        View = AimView.From(kept);
        if (View.Report is not { } report || ExplainedBudget.Of(report, Format) is not { } words
            || BudgetView.From(BudgetTexts.Get("bars.title"), BudgetTexts.Get("bars.other"), report.Aim.Budget) is not { } bars)
            return NotFound();
        (Words, Bars) = (words, bars);
        return Page();
    }
}
