using Microsoft.Playwright;

namespace MarkReader.Service.Tests.Support;

/// <summary>Whether a page keeps to the unit and the decimal sign that its reader chose.</summary>
internal static class ReaderSigns
{
    /// <summary>Every word of the page, shown or folded away, with what stands in fields, and every word of its pictures.</summary>
    private const string Words =
        """
        async () => {
          const main = document.querySelector('main'), said = [main.textContent];
          for (const field of main.querySelectorAll('input[type=text]')) said.push(field.value, field.placeholder);
          for (const picture of main.querySelectorAll('img[src*=".svg"]')) {
            said.push(picture.alt);
            const drawn = new DOMParser().parseFromString(await (await fetch(picture.src)).text(), 'image/svg+xml');
            for (const text of drawn.querySelectorAll('text')) said.push(text.textContent);
          }
          return said.map((text) => text.replace(/\s+/g, ' ')).join('\n');
        }
        """;

    /// <summary>Shows the page in inches with a decimal comma and looks for points and millimetres.</summary>
    /// <param name="apart">What is no number, such as a version.</param>
    public static async Task ShouldKeepToInchesAndCommasAsync(this IPage page, BrowserSite site, params string[] apart)
    {
        await page.Context.AddCookiesAsync([new() { Name = "display", Value = "in-comma", Url = site.Address.ToString() }]);
        await page.ReloadAsync();
        // The wavelength in the cautions is a name rather than a reading.
        string words = apart.Append("10.6 µm").Aggregate(await page.EvaluateAsync<string>(Words), (text, other) => text.Replace(other, "", StringComparison.Ordinal));
        Assert.Contains(" in", words, StringComparison.Ordinal);
        Assert.DoesNotMatch(@".{0,40}\d\.\d.{0,20}", words);
        Assert.DoesNotMatch(@".{0,40}\d[\s\u00a0]mm\b.{0,20}", words);
        await page.Context.ClearCookiesAsync(new() { Name = "display" });
        await page.ReloadAsync();
    }
}
