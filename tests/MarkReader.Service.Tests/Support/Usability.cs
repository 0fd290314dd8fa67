using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace MarkReader.Service.Tests.Support;

/// <summary>Faults of a page that everybody would meet.</summary>
internal static class Usability
{
    /// <summary>Visible controls lower or narrower than 48 px, and whatever reaches past the screen's edge.</summary>
    private const string Faults =
        """
        () => {
          const faults = [];
          const wide = document.documentElement.clientWidth;
          for (const element of document.querySelectorAll('body *')) {
            const box = element.getBoundingClientRect();
            if (!box.width || !box.height || element.closest('.unseen, .skip, svg')) continue;
            const name = `${element.tagName} ${element.className} ${(element.textContent ?? '').trim().slice(0, 40)}`;
            if (box.right > wide + 0.5 || box.left < -0.5) faults.push(`past the edge: ${name} ${box.left} ${box.right}`);
            const control = element.matches('button, summary, select, input[type=text], nav a, .jumps a, .button, .choice label, .table-of-results a, .foot a, .brand');
            if (control && (box.height < 47.5 || box.width < 47.5)) faults.push(`small: ${name} ${box.width} ${box.height}`);
          }
          if (document.documentElement.scrollWidth > wide) faults.push(`scrolls sideways: ${document.documentElement.scrollWidth} > ${wide}`);
          return faults;
        }
        """;

    public static async Task ShouldFitAsync(this IPage page) => Assert.Empty(await page.EvaluateAsync<string[]>(Faults));

    public static async Task ShouldBeAccessibleAsync(this IPage page)
    {
        AxeResult result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(fault => $"{fault.Id}: {fault.Help} {string.Join(" | ", fault.Nodes.Select(node => node.Html))}"));
        Assert.NotEmpty(result.Passes);
    }
}
