using MarkReader.Quantities;
using MarkReader.Service.Hosting.Phones;
using MarkReader.Service.Problems;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>How phones on the same network are let in and shut out.</summary>
/// <remarks>The form carries no token; <see cref="Hosting.LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class PhonesModel(PhoneGate gate) : PageModel
{
    /// <summary>Whether the service was started for phones.</summary>
    public bool IsOn => gate.Key is not null;

    /// <summary>The page's addresses for phones, with the link that lets one in.</summary>
    public IReadOnlyList<(string Address, string Link)> Ways { get; private set; } = [];

    /// <summary>Whether a phone asks, which keeps its place when the key is renewed.</summary>
    public bool IsPhone => !Peer.IsLoopback(HttpContext.Connection.RemoteIpAddress);

    public bool Renewed { get; private set; }

    public Failure? Failure { get; private set; }

    public void OnGet(bool renewed)
    {
        Renewed = renewed && IsOn;
        Show();
    }

    /// <summary>Makes a new key.</summary>
    public IActionResult OnPost()
    {
        if (gate.Key is null)
            return Redirect("/phones");
        Failure = gate.Key.Renew();
        if (Failure is null)
        {
            gate.Keep(HttpContext);
            return Redirect("/phones?renewed=true");
        }
        Response.StatusCode = ProblemMap.StatusOf(Failure.Code);
        Show();
        return Page();
    }

    private void Show()
    {
        // The key is on the page.
        Response.Headers.CacheControl = "no-store";
        if (gate.Key is { } key)
            Ways = [.. OwnAddresses.Now(HttpContext.Connection.LocalPort).Select(address => (address, $"{address}/join?key={key.Text}"))];
    }
}
