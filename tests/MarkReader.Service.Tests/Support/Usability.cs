using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace MarkReader.Service.Tests.Support;

/// <summary>Faults of a page that everybody would meet.</summary>
internal static class Usability
{
    /// <summary>Visible controls lower or narrower than 48 px, whatever reaches past the screen's edge, and words cut off in a drawing; once the style sheets and fonts are there.</summary>
    private const string Faults =
        """
        async () => {
          const faults = [];
          for (const link of document.querySelectorAll('link[rel=stylesheet]')) {
            for (let tries = 0; !link.sheet && tries < 500; tries++) await new Promise((resolve) => setTimeout(resolve, 20));
            if (!link.sheet) faults.push(`not loaded: ${link.href}`);
          }
          await document.fonts.ready;
          const wide = document.documentElement.clientWidth;
          for (const element of document.querySelectorAll('body *')) {
            const box = element.getBoundingClientRect();
            if (!box.width || !box.height || element.closest('.unseen, .skip, svg')) continue;
            const name = `${element.tagName} ${element.className} ${(element.textContent ?? '').trim().slice(0, 40)}`;
            if (box.right > wide + 0.5 || box.left < -0.5) faults.push(`past the edge: ${name} ${box.left} ${box.right}`);
            const control = element.matches('button, summary, select, input[type=text], input[type=file], nav a, .jumps a, .button, .choice label, .check, .option, .rows a, .machine-list a, .table-of-results a, .back, .foot a, .brand');
            if (control && (box.height < 47.5 || box.width < 47.5)) faults.push(`small: ${name} ${box.width} ${box.height}`);
          }
          // The view of a photo shows a part of what is drawn on purpose.
          for (const text of document.querySelectorAll('main svg text')) {
            const box = text.getBoundingClientRect(), whole = text.closest('svg').getBoundingClientRect();
            if (!text.closest('.aim-view') && box.width && (box.left < whole.left - 1 || box.right > whole.right + 1 || box.top < whole.top - 1 || box.bottom > whole.bottom + 1)) faults.push(`cut off in a drawing: ${text.textContent}`);
          }
          if (document.documentElement.scrollWidth > wide) faults.push(`scrolls sideways: ${document.documentElement.scrollWidth} > ${wide}`);
          return faults;
        }
        """;

    /// <summary>Widths of a small and a usual phone, a tablet and a desk, px.</summary>
    public static IReadOnlyList<int> Widths { get; } = [320, 360, 768, 1280];

    /// <summary>A name as long as may be, without a blank at which a line could end.</summary>
    public static string Long(string name, int length = 80) => name.PadRight(length, 'm');

    /// <summary>Shows one page at each of the widths in turn.</summary>
    public static async Task AtEachWidthAsync(this IPage page, Func<int, Task> look)
    {
        foreach (int width in Widths)
        {
            await page.SetViewportSizeAsync(width, 780);
            await look(width);
        }
    }

    /// <summary>Shows one page light and dark.</summary>
    public static async Task LightAndDarkAsync(this IPage page, Func<string, Task> look)
    {
        foreach (ColorScheme scheme in (ColorScheme[])[ColorScheme.Dark, ColorScheme.Light])
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await look(scheme == ColorScheme.Dark ? "dark" : "light");
        }
    }

    public static async Task ShouldFitAsync(this IPage page)
    {
        await page.WaitForLoadStateAsync();
        Assert.Empty(await page.EvaluateAsync<string[]>(Faults));
    }

    public static Task ShouldFitAtEachWidthAsync(this IPage page) => page.AtEachWidthAsync(_ => page.ShouldFitAsync());

    public static async Task ShouldBeAccessibleAsync(this IPage page)
    {
        await page.WaitForLoadStateAsync();
        AxeResult result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(fault => $"{fault.Id}: {fault.Help} {string.Join(" | ", fault.Nodes.Select(node => node.Html))}"));
        Assert.NotEmpty(result.Passes);
    }
}
