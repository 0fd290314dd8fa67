using MarkReader.Application.History;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Machines;

/// <summary>What a machine did over its visits.</summary>
internal sealed class HistoryModel(HistoryDesk desk, Figures figures) : PageModel
{
    public MachineHistory? History { get; private set; }

    public Failure? Failure { get; private set; }

    public HistoryWords Words { get; } = new(figures.Record);

    public DateTimeOffset Now { get; } = desk.Now;

    /// <summary>How this computer's clock stands to UTC: "UTC+01:00".</summary>
    public string Clock => figures.Record.Offset(Now);

    public IActionResult OnGet(long id)
    {
        if (desk.Of(id).TryGet(out MachineHistory? history, out Failure? failure))
        {
            History = history;
            return Page();
        }

        if (ProblemMap.StatusOf(failure.Code) == StatusCodes.Status404NotFound)
            return NotFound();
        Failure = failure;
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return Page();
    }
}
