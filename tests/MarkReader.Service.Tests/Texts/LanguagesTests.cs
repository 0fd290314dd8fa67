using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using MarkReader.Service.Display;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Texts;

/// <summary>That another language is a matter of resource files alone, and that numbers do not follow it.</summary>
public sealed partial class LanguagesTests(TranslatedSite site) : IClassFixture<TranslatedSite>
{
    private const string German = "de-AT,de;q=0.9,en;q=0.5";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(null, null, "en", "Visits")]
    [InlineData(German, null, "de", "Besuche")]
    [InlineData("fr, de;q=0.1", null, "de", "Besuche")]
    [InlineData("fr", null, "en", "Visits")]
    [InlineData("de-CH", null, "de", "Besuche")]
    [InlineData("en-GB, de", null, "en", "Visits")]
    [InlineData("de;q=0, ;;q=x", null, "en", "Visits")]
    [InlineData("en", "de", "de", "Besuche")]
    [InlineData(German, "en", "en", "Visits")]
    [InlineData(German, "../../x", "de", "Besuche")]
    public async Task A_page_speaks_the_language_that_was_chosen_or_is_asked_for(string? asked, string? chosen, string language, string visits)
    {
        string page = await PageAsync("/display", asked, chosen);
        Assert.Contains($"<html lang=\"{language}\">", page, StringComparison.Ordinal);
        Assert.Contains($">{visits}</a>", page, StringComparison.Ordinal);
        // What is not translated is said in English.
        Assert.Contains(">Machines</a>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Advice_is_given_in_the_other_language_with_the_same_numbers()
    {
        string address = await BeginAsync();
        Assert.Contains("Noch keine Marke.", Reason(await VisitAsync(address, German)), StringComparison.Ordinal);
        Assert.Contains("Noch keine Marke.", await PageAsync(address, German, null), StringComparison.Ordinal);
        await MarkAsync(address);

        JsonElement english = await VisitAsync(address, "en"), german = await VisitAsync(address, German);

        // From 0.4 to 2.4 mm along u on a tape at 45 degrees: 2 mm times the cosine across the beam.
        Assert.Contains("The spread over the travel is 1.41 mm.", Reason(english), StringComparison.Ordinal);
        Assert.Contains("Über den Weg wandert die Marke um 1.41 mm.", Reason(german), StringComparison.Ordinal);
        string[] numbers = Numbers(english);
        Assert.True(numbers.Length > 50);
        Assert.Equal(numbers, Numbers(german));
        string comma = await PageAsync(address, German, null, "mm-comma");
        Assert.Contains("wandert die Marke um 1,41 mm.", comma, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pictures_have_their_words_in_the_other_language()
    {
        string address = await BeginAsync();
        await MarkAsync(address);
        string picture = $"/api{address}/pictures/target-1.svg";
        Assert.Contains(">near<", await PageAsync(picture, "en", null), StringComparison.Ordinal);
        string german = await PageAsync(picture, German, null);
        Assert.Contains(">nah<", german, StringComparison.Ordinal);
        Assert.DoesNotContain(">near<", german, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_language_is_chosen_on_the_display_page_where_there_are_several()
    {
        string page = await PageAsync("/display", "en", null);
        Assert.Matches("""<label lang="en"><input[^>]* checked[^>]*>English</label>""", page);
        Assert.Matches("""<label lang="de"><input[^>]*>Deutsch</label>""", page);
        using FormUrlEncodedContent form = new([new("unit", "in"), new("sign", "point"), new("language", "de")]);
        using HttpClientHandler handler = new();
        using HttpClient browser = new(handler) { BaseAddress = site.Address };
        string saved = await (await browser.PostAsync("/display", form, Cancellation)).Content.ReadAsStringAsync(Cancellation);
        Assert.Contains("Saved.", saved, StringComparison.Ordinal);
        Assert.Contains("<legend>Sprache</legend>", saved, StringComparison.Ordinal);
        Assert.Contains(">Besuche</a>", await browser.GetStringAsync("/machines", Cancellation), StringComparison.Ordinal);

        using Site plain = new();
        Assert.DoesNotContain("name=\"language\"", await plain.Client.GetStringAsync("/display", Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_of_lengths_is_told_in_inches_in_the_other_language_too()
    {
        CultureInfo before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = Translation.German;
        try
        {
            Assert.Equal("zwischen 1 und 2 in", new Figures(new Preferences(true, false)).Sentence("zwischen 25.4 und 50.8 mm"));
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void A_language_is_there_when_its_texts_lie_beside_the_program()
    {
        string folder = Directory.CreateTempSubdirectory("markreader-languages-").FullName;
        foreach (string file in (string[])["pt-BR/MarkReader.Service.resources.dll", "de/MarkReader.Service.resources.dll", "fr/Other.resources.dll"])
        {
            Directory.CreateDirectory(Path.Combine(folder, Path.GetDirectoryName(file)!));
            File.WriteAllBytes(Path.Combine(folder, file), []);
        }

        Assert.Equal(["en", "de", "pt-BR"], Languages.In(folder).All.Select(l => l.Name));
        Assert.False(Languages.In(Path.Combine(folder, "fr")).HasChoice);
        Directory.Delete(folder, recursive: true);
    }

    private async Task<string> BeginAsync()
    {
        using HttpResponseMessage kept = await site.Client.SendAsync(HttpMethod.Post, "/api/machines", Machines.Named("press"), ("Idempotency-Key", Guid.NewGuid().ToString()));
        string visit = $$"""{ "machine": {{(await kept.JsonAsync()).GetProperty("id").GetInt64()}} }""";
        using HttpResponseMessage begun = await site.Client.SendAsync(HttpMethod.Post, "/api/visits", visit, ("Idempotency-Key", Guid.NewGuid().ToString()));
        return $"/visits/{(await begun.JsonAsync()).GetProperty("id").GetInt64()}";
    }

    private async Task MarkAsync(string address)
    {
        foreach ((string path, string u) in new[] { ("80", "0.4"), ("480", "2.4") })
        {
            string mark = $$"""{ "kind": "mark", "leg": "1", "path": {{path}}, "u": {{u}}, "v": 0.2, "uncertainty": 0.05 }""";
            (await site.Client.SendAsync(HttpMethod.Post, "/api" + address + "/events", mark, ("Idempotency-Key", path), ("Accept-Language", German))).Dispose();
        }
    }

    private async Task<JsonElement> VisitAsync(string address, string asked)
    {
        using HttpResponseMessage answer = await site.Client.SendAsync(HttpMethod.Get, "/api" + address, null, ("Accept-Language", asked));
        return await answer.JsonAsync();
    }

    private async Task<string> PageAsync(string address, string? asked, string? chosen, string? display = null)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, address);
        request.Headers.TryAddWithoutValidation("Accept", "text/html, */*");
        if (asked is not null)
            request.Headers.TryAddWithoutValidation("Accept-Language", asked);
        string[] cookies = [.. chosen is null ? [] : new[] { "language=" + chosen }, .. display is null ? [] : new[] { "display=" + display }];
        if (cookies.Length > 0)
            request.Headers.TryAddWithoutValidation("Cookie", string.Join("; ", cookies));
        using HttpResponseMessage answer = await site.Client.SendAsync(request, Cancellation);
        answer.EnsureSuccessStatusCode();
        return System.Net.WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancellation));
    }

    private static string Reason(JsonElement visit) => visit.GetProperty("advice").GetProperty("reason").GetString()!;

    private static string[] Numbers(JsonElement visit) => [.. Number().Matches(visit.ToString()).Select(m => m.Value)];

    [GeneratedRegex(@"\d+(?:[.,]\d+)*", RegexOptions.CultureInvariant)]
    private static partial Regex Number();
}
