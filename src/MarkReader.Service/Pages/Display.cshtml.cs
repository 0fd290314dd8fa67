using MarkReader.Service.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>The unit of lengths, the decimal sign and, where there are several, the language.</summary>
/// <remarks>The form carries no token; <see cref="Hosting.LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class DisplayModel(Figures figures, Languages languages) : PageModel
{
    public Preferences Shown { get; } = figures.Preferences;

    public Languages Languages { get; } = languages;

    public bool Saved { get; private set; }

    public void OnGet(bool saved) => Saved = saved;

    public IActionResult OnPost(string? unit, string? sign, string? language)
    {
        new Preferences(unit == "in", sign == "comma").Write(Response);
        Languages.Write(language, Response);
        return Redirect("/display?saved=true");
    }
}
