using System.Globalization;
using System.Net;
using MarkReader.Quantities;
using MarkReader.Service.Problems;
using MarkReader.Service.Settings;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>Lets in who comes over loopback, and from the network who has joined or shows the key.</summary>
/// <remarks>
/// A person's phone opens /join?key=…, which leaves a cookie; a program sends Authorization: Bearer KEY (RFC 6750). Wrong keys
/// are counted, and after <see cref="WrongKeys.Most"/> of them none of that address is looked at for the rest of a minute. A
/// phone that has joined is let in all the same: its neighbours' mistakes are not its own.
/// </remarks>
internal sealed class PhoneGate(PhoneKey? key, TimeProvider time)
{
    private const string Cookie = "phone";
    private const string Scheme = "Bearer ";

    private static readonly TimeSpan s_kept = TimeSpan.FromDays(400);

    private readonly WrongKeys _wrong = new(time);

    /// <summary>The key; null when the service is for this machine alone.</summary>
    public PhoneKey? Key => key;

    public static Outcome<PhoneGate> Open(ServiceSettings settings)
    {
        if (!settings.Phones)
            return new PhoneGate(null, TimeProvider.System);
        return PhoneKey.Open(settings.Data).TryGet(out PhoneKey? key, out Failure? failure) ? new PhoneGate(key, TimeProvider.System) : failure;
    }

    public Task Invoke(HttpContext context, RequestDelegate next)
    {
        if (key is null)
            return next(context);
        bool joining = context.Request.Path.Equals("/join", StringComparison.Ordinal) && HttpMethods.IsGet(context.Request.Method);
        if (Peer.IsLoopback(context.Connection.RemoteIpAddress))
            return joining ? Enter(context) : next(context);
        if (joining)
            return Join(context, key);
        Failure? refusal = Check(context, key);
        return refusal is null ? next(context) : Refuse(context, refusal);
    }

    /// <summary>Lets the phone that asks stay in when the key is renewed.</summary>
    public void Keep(HttpContext context)
    {
        if (key is not null && !Peer.IsLoopback(context.Connection.RemoteIpAddress))
            context.Response.Cookies.Append(Cookie, key.Proof, Options(s_kept));
    }

    private Task Join(HttpContext context, PhoneKey key)
    {
        Failure? refusal = CheckKey(context, key, context.Request.Query["key"]);
        if (refusal is not null)
            return Refuse(context, refusal);
        Keep(context);
        return Enter(context);
    }

    private static Task Enter(HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        context.Response.Redirect("/visits");
        return Task.CompletedTask;
    }

    private Failure? Check(HttpContext context, PhoneKey key)
    {
        if (context.Request.Cookies[Cookie] is { } proof)
        {
            if (key.IsProof(proof))
                return null;
            // So that the phone's browser stops sending it.
            context.Response.Cookies.Delete(Cookie, Options(null));
            return Count(context);
        }
        string header = context.Request.Headers.Authorization.ToString();
        return header.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase)
            ? CheckKey(context, key, header[Scheme.Length..].Trim())
            : new(ServiceFailures.KeyMissing, ServiceTexts.Get("phoneGate.thisPhoneOrProgramHas"), ServiceTexts.Get("phoneGate.readCodeOrSendKey"));
    }

    private Failure? CheckKey(HttpContext context, PhoneKey key, string? text)
    {
        if (_wrong.IsOut(Peer.Counted(context.Connection.RemoteIpAddress)))
            return TooMany();
        return key.IsKey(text) ? null : Count(context);
    }

    private Failure Count(HttpContext context)
    {
        IPAddress address = Peer.Counted(context.Connection.RemoteIpAddress);
        if (_wrong.IsOut(address))
            return TooMany();
        _wrong.Add(address);
        return new(ServiceFailures.KeyWrong, ServiceTexts.Get("phoneGate.keyNotOrNoLonger"), ServiceTexts.Get("phoneGate.readCodeOnServicePage"));
    }

    private static Failure TooMany() => new(ServiceFailures.KeyTries, ServiceTexts.Get("phoneGate.tooManyWrongKeysCame"), ServiceTexts.Get("phoneGate.waitMinuteThenReadCode"));

    private static Task Refuse(HttpContext context, Failure refusal)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.CacheControl = "no-store";
        if (refusal.Code == ServiceFailures.KeyTries)
            headers.RetryAfter = WrongKeys.Window.TotalSeconds.ToString("0", CultureInfo.InvariantCulture);
        else
            headers.WWWAuthenticate = "Bearer realm=\"MarkReader\"";
        return MissingPages.IsForPeople(context) ? JoinFirst.AnswerAsync(context, refusal) : Problem.From(refusal).ExecuteAsync(context);
    }

    private static CookieOptions Options(TimeSpan? age) => new() { MaxAge = age, HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true, Path = "/" };
}
