namespace MarkReader.Service.Uploads;

/// <summary>Names the photos that are held for a page to the browser that sent them, so that they are still there after another form of the page, or when the page is opened again.</summary>
internal static class HeldCookie
{
    private const string Name = "held";
    private const char Between = '.';
    private const int Most = 10;

    /// <summary>One set for each person.</summary>
    public static IReadOnlyList<HeldSet> Read(HttpRequest request, HeldPhotos held) =>
        [.. (request.Cookies[Name] ?? "").Split(Between).Take(Most).Select(held.Find).OfType<HeldSet>().DistinctBy(s => s.Person)];

    /// <param name="person">Whose photos they are; empty where that is not asked.</param>
    /// <param name="set">Null when nothing of theirs is held any more.</param>
    public static void Write(HttpContext context, HeldPhotos held, string person, HeldSet? set)
    {
        CookieOptions options = new() { Path = context.Request.Path, MaxAge = HeldPhotos.Longest, HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true };
        IEnumerable<HeldSet> others = Read(context.Request, held).Where(s => s.Person != person);
        string tokens = string.Join(Between, (set is null ? others : others.Prepend(set)).Select(s => s.Token));
        if (tokens.Length > 0)
            context.Response.Cookies.Append(Name, tokens, options);
        else if (context.Request.Cookies.ContainsKey(Name))
            context.Response.Cookies.Delete(Name, options);
    }
}
