using System.Globalization;
using MarkReader.Service.Display;
using Microsoft.AspNetCore.Localization;
using Microsoft.Net.Http.Headers;

namespace MarkReader.Service.Hosting;

/// <summary>Answers in the language that was chosen in the browser, else in the one that it asks for, else in English.</summary>
/// <remarks>Words only: numbers are read and written alike in every language, with the sign and the unit that <see cref="Preferences"/> hold.</remarks>
internal static class LanguageChoice
{
    public static void UseLanguages(this WebApplication app)
    {
        Languages languages = app.Services.GetRequiredService<Languages>();
        if (languages.HasChoice)
        {
            app.Use((context, next) =>
            {
                context.Response.Headers.Append(HeaderNames.Vary, $"{HeaderNames.AcceptLanguage}, {HeaderNames.Cookie}");
                return next(context);
            });
        }

        app.UseRequestLocalization(new RequestLocalizationOptions
        {
            DefaultRequestCulture = new(CultureInfo.InvariantCulture, Languages.English),
            SupportedCultures = [CultureInfo.InvariantCulture],
            SupportedUICultures = [.. languages.All],
            RequestCultureProviders =
            [
                new CustomRequestCultureProvider(context => Task.FromResult(Languages.Chosen(context.Request) is { Length: > 0 } chosen ? new ProviderCultureResult(chosen) : null)),
                new AcceptLanguageHeaderRequestCultureProvider(),
            ],
        });
    }
}
