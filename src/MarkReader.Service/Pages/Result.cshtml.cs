using MarkReader.Application.Storage;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>One result.</summary>
/// <remarks>Forms carry no token; <see cref="Hosting.LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
public sealed class ResultModel(AimStore aims) : PageModel
{
    public AimView View { get; private set; } = null!;

    /// <summary>The photos, each with the name of its title.</summary>
    public IReadOnlyList<(string Title, string Photo)> Photos => View.Kept.Aim.Inputs switch
    {
        { IsOnePhoto: true } one => [("photo.both", one.FarPhoto)],
        var two => [("photo.near", two.NearPhoto), ("photo.far", two.FarPhoto)],
    };

    public IActionResult OnGet(long id) => Find(id) ? Page() : NotFound();

    /// <summary>The result alone, for a page that is open already.</summary>
    public IActionResult OnGetPanel(long id) => Find(id) ? Partial("_Aim", View) : NotFound();

    public IActionResult OnPostDelete(long id) => aims.Delete(id).TryGet(out _, out _) ? RedirectToPage("/Results") : NotFound();

    private bool Find(long id)
    {
        if (!aims.Find(id).TryGet(out KeptAim? kept, out _))
            return false;
        View = AimView.From(kept);
        return true;
    }
}
