using System.Globalization;
using System.Net;
using System.Net.Mime;
using System.Security.Cryptography;
using System.Text;
using MarkReader.Quantities;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>The page for a phone that has not joined. It stands alone: neither style nor picture is given out without the key.</summary>
internal static class JoinFirst
{
    private const string Style =
        "html{background:Canvas}body{color:CanvasText;background:Canvas;font:1.125rem/1.5 system-ui,sans-serif;max-width:34rem;margin:0 auto;padding:24px 16px}h1{font-size:1.375rem}"
        + "a{color:inherit;display:inline-flex;align-items:center;min-height:48px}";

    private static readonly string s_policy =
        $"default-src 'none'; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Style)))}'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static Task AnswerAsync(HttpContext context, Failure refusal)
    {
        IStringLocalizer<PhoneTexts> texts = context.RequestServices.GetRequiredService<IStringLocalizer<PhoneTexts>>();
        string Text(string name) => WebUtility.HtmlEncode(texts[name].Value);
        string reason = refusal.Code.Name switch { "KEY_MISSING" => "missing", "KEY_TRIES" => "tries", _ => "wrong" };
        string page =
            $"""
            <!doctype html>
            <html lang="{CultureInfo.CurrentUICulture.Name}">
            <head>
              <meta charset="utf-8">
              <meta name="viewport" content="width=device-width, initial-scale=1">
              <meta name="color-scheme" content="light dark">
              <title>{Text("first.title")} · MarkReader</title>
              <link rel="icon" href="data:,">
              <style>{Style}</style>
            </head>
            <body>
              <main>
                <h1>{Text("first.title")}</h1>
                <p>{Text("first." + reason)}</p>
                <ol>
                  <li>{Text("first.open")}</li>
                  <li>{Text("first.read")}</li>
                </ol>
                <p><a href="/visits">{Text("first.again")}</a></p>
                          </main>
            </body>
            </html>
            """;
        SecurityHeaders.Use(context, s_policy);
        context.Response.StatusCode = ProblemMap.StatusOf(refusal.Code);
        context.Response.ContentType = MediaTypeNames.Text.Html + "; charset=utf-8";
        return context.Response.WriteAsync(page, context.RequestAborted);
    }
}
