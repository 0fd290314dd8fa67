using System.Text.Json;
using MarkReader.Service.Guide;
using Microsoft.Playwright;

namespace MarkReader.Guide.Playing;

/// <summary>Reads what a part of a page says.</summary>
internal static class PanelWords
{
    // Words of no size are for screen readers; what is folded away is not said yet; sentences inside forms and inside sections of their own (cautions) are about these.
    private const string Read =
        """
        (panel, dropped) => {
          const seen = (e) => { if (!e.checkVisibility()) return false; const box = e.getBoundingClientRect(); return box.width > 1 && box.height > 1; };
          const words = (e) => {
            const walker = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
            let text = '';
            while (walker.nextNode()) if (seen(walker.currentNode.parentElement)) text += walker.currentNode.data;
            return text.replace(/[ \n\t]+/g, ' ').trim();
          };
          const all = (selector) => [...panel.querySelectorAll(selector)].filter(seen);
          const own = (e) => e.closest('section') === panel || !panel.matches('section');
          return {
            heading: words(all('h1, h2')[0]),
            says: all('p').filter((p) => own(p) && !p.closest('form, nav, header, footer, figure')).map(words).filter((text) => text && !dropped.includes(text)),
            buttons: [...new Set(all('button, .button, summary').filter((b) => own(b)).map(words))],
          };
        }
        """;

    /// <param name="dropped">Sentences that are not wanted.</param>
    public static async Task<GuideChapter> ReadAsync(this ILocator panel, string name, int after, string? press, params string[] dropped)
    {
        JsonElement read = (await panel.EvaluateAsync(Read, dropped))!.Value;
        return new(name, after, read.GetProperty("heading").GetString()!, Texts(read, "says"), Texts(read, "buttons"), press, null);
    }

    private static string[] Texts(JsonElement read, string part) => [.. read.GetProperty(part).EnumerateArray().Select(text => text.GetString()!)];
}
