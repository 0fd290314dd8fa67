using System.Globalization;
using System.Resources;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Display;

/// <summary>The languages that the service speaks: English, and each that texts lie beside the program for.</summary>
/// <remarks>A translation is a copy of a resource file with the language in its name, PageTexts.de.resx beside PageTexts.resx; what it lacks is said in English.</remarks>
public sealed class Languages(IReadOnlyList<CultureInfo> all)
{
    private const string Cookie = "language";

    private const int MostAsked = 8;

    // RFC 5646, 4.4.1.
    private const int LongestName = 35;

    // Not English for a language that does not give its name.
    private const string Name = "language.name";

    private static readonly ResourceManager s_pages = new(typeof(PageTexts));

    private static readonly TimeSpan s_kept = TimeSpan.FromDays(400);

    public static CultureInfo English { get; } = CultureInfo.GetCultureInfo("en");

    /// <summary>English first.</summary>
    public IReadOnlyList<CultureInfo> All { get; } = all;

    public bool HasChoice => All.Count > 1;

    /// <summary>Those that have texts of the service in a folder: it holds a folder for each, named after the language.</summary>
    public static Languages In(string folder)
    {
        string texts = typeof(Languages).Assembly.GetName().Name + ".resources.dll";
        return new([English, .. Directory.EnumerateDirectories(folder)
            .Where(f => File.Exists(Path.Combine(f, texts)))
            .Select(f => Path.GetFileName(f))
            .Where(name => name != English.Name)
            .Order(StringComparer.Ordinal)
            .Select(CultureInfo.GetCultureInfo)]);
    }

    /// <summary>A language's name in itself.</summary>
    public static string NameOf(CultureInfo language)
    {
        string? name = s_pages.GetResourceSet(language, createIfNotExists: true, tryParents: language.Name == English.Name)?.GetString(Name);
        return name ?? language.Name;
    }

    /// <summary>The language that was chosen in the browser, else the first there is of those that it asks for (RFC 9110, 12.5.4; RFC 4647, 3.4: de answers de-AT), else English.</summary>
    internal CultureInfo For(HttpRequest request)
    {
        if (Find(request.Cookies[Cookie]) is { } chosen)
            return chosen;
        IEnumerable<string> asked = request.GetTypedHeaders().AcceptLanguage
            .Where(a => a.Quality is not 0 && a.Value.Length <= LongestName)
            .OrderByDescending(a => a.Quality ?? 1)
            .Select(a => a.Value.ToString());
        return asked.Take(MostAsked).Select(Nearest).FirstOrDefault(l => l is not null) ?? English;
    }

    /// <summary>Keeps the choice in the browser; a language that is not there is left out.</summary>
    internal void Write(string? chosen, HttpResponse response)
    {
        if (HasChoice && Find(chosen) is { } language)
            response.Cookies.Append(Cookie, language.Name, new() { MaxAge = s_kept, HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true });
    }

    private CultureInfo? Nearest(string name) =>
        Find(name) ?? (name.LastIndexOf('-') is > 0 and int end ? Nearest(name[..end]) : null);

    private CultureInfo? Find(string? name) => All.FirstOrDefault(l => l.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
}
