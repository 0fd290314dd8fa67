using System.Globalization;
using MarkReader.Service.Display;
using Microsoft.Net.Http.Headers;

namespace MarkReader.Service.Hosting;

/// <summary>Answers in the language that was chosen in the browser, else in the one that it asks for, else in English.</summary>
/// <remarks>Words only: numbers are read and written alike in every language, with the sign and the unit that <see cref="Preferences"/> hold.</remarks>
internal static class LanguageChoice
{
    public static void UseLanguages(this WebApplication app)
    {
        Languages languages = app.Services.GetRequiredService<Languages>();
        app.Use((context, next) =>
        {
            if (languages.HasChoice)
                context.Response.Headers.Append(HeaderNames.Vary, $"{HeaderNames.AcceptLanguage}, {HeaderNames.Cookie}");
            return AnswerAsync(context, next, languages.For(context.Request));
        });
    }

    // What is set in here holds for the request alone.
    private static async Task AnswerAsync(HttpContext context, RequestDelegate next, CultureInfo language)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = language;
        await next(context);
    }
}
