using MarkReader.Application.CardChecks;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.CardChecks;

/// <summary>One check of a printed card: the errors of marks in a picture, the verdict, what to do.</summary>
/// <remarks>The form carries no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class CardCheckModel(CardCheckStore checks) : PageModel
{
    public KeptCardCheck Check { get; private set; } = null!;

    /// <summary>Whether it was made just now.</summary>
    public bool Made { get; private set; }

    /// <summary>Why it was not deleted.</summary>
    public Failure? Wrong { get; private set; }

    /// <summary>The sign beside the verdict, as studies have it.</summary>
    public string Sign => Check.Report.Verdict switch { "good" => "fits", "notGood" => "tooCoarse", _ => "undecided" };

    public double PictureHeight => CardCheckPicture.Of(Check.Report).Height;

    public IActionResult OnGet(long id, int made) => Show(id, made == 1);

    public IActionResult OnPostDelete(long id)
    {
        if (checks.Remove(id).TryGet(out _, out Failure? failure))
            return Redirect("/cameras/card-checks");
        Wrong = failure;
        IActionResult page = Show(id, false);
        if (page is PageResult)
            Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return page;
    }

    private IActionResult Show(long id, bool made)
    {
        if (!checks.Find(id).TryGet(out KeptCardCheck? check, out _))
            return NotFound();
        (Check, Made) = (check, made);
        return Page();
    }
}
