using MarkReader.Quantities;
using MarkReader.Service.Problems;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>A page about one thing that is kept, with several forms: where one is refused the page comes back whole, with the refusal beside that form.</summary>
public abstract class FormsModel : PageModel
{
    private (string Form, Failure Failure)? _wrong;

    /// <summary>What is wrong with a form; null when nothing is.</summary>
    public Failure? WrongIn(string form) => _wrong is { } wrong && wrong.Form == form ? wrong.Failure : null;

    /// <summary>The page as it is now; that it is not found when the thing is not kept.</summary>
    protected abstract IActionResult Show(long id);

    /// <summary>The page with a refusal, and its status.</summary>
    protected IActionResult Refuse(long id, string form, Failure failure)
    {
        _wrong = (form, failure);
        IActionResult page = Show(id);
        if (page is PageResult)
            Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return page;
    }
}
