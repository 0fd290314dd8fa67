using MarkReader.Service.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>The unit of lengths and the decimal sign.</summary>
/// <remarks>The form carries no token; <see cref="Hosting.LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class DisplayModel(Figures figures) : PageModel
{
    public Preferences Shown { get; private set; } = figures.Preferences;

    public bool Saved { get; private set; }

    public void OnPost(string? unit, string? sign)
    {
        Shown = new(unit == "in", sign == "comma");
        Shown.Write(Response);
        Saved = true;
    }
}
