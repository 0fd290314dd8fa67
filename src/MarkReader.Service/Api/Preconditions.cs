using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Api;

/// <summary>Versions as entity tags (RFC 9110, 8.8.3 and 13.1.1): version 3 is "3", with the quotes.</summary>
internal static partial class Preconditions
{
    public const string Description = "The ETag of the answer that the change was made for, or * for whatever is kept.";

    public const string KeyDescription = "Chosen at random for this request, 1 to 100 letters and digits; a repeated request has the same one. Without it every request adds one more.";

    public static void SetTag(HttpContext context, long version) => context.Response.Headers.ETag = string.Create(CultureInfo.InvariantCulture, $"\"{version}\"");

    /// <summary>What If-Match asks for; a tag that is none of ours matches no version, and what is no tag at all is refused.</summary>
    public static Outcome<ExpectedVersion> Required(string? ifMatch) => string.IsNullOrWhiteSpace(ifMatch)
        ? new Failure(ServiceFailures.IfMatchMissing, ServiceTexts.Get("preconditions.requestDoesNotSayWhich"), ServiceTexts.Get("preconditions.readAndSendAnswerEtag"))
        : Optional(ifMatch);

    /// <summary>The same; any version when the header is missing.</summary>
    public static Outcome<ExpectedVersion> Optional(string? ifMatch)
    {
        if (string.IsNullOrWhiteSpace(ifMatch) || ifMatch.Trim() == "*")
            return ExpectedVersion.Any;
        List<long> versions = [];
        foreach (string tag in ifMatch.Split(',', StringSplitOptions.TrimEntries))
        {
            if (tag.Length > 2 && tag[0] == '"' && tag[^1] == '"' && long.TryParse(tag[1..^1], NumberStyles.None, CultureInfo.InvariantCulture, out long version))
                versions.Add(version);
            else if (!Tag().IsMatch(tag))
                return new Failure(ServiceFailures.IfMatchInvalid, ServiceTexts.Get("preconditions.ifMatchHasSomethingThat"), ServiceTexts.Get("preconditions.sendEtagAnswerAsCame"));
        }

        return ExpectedVersion.OneOf([.. versions]);
    }

    // entity-tag = [ weak ] opaque-tag (RFC 9110, 8.8.3)
    [GeneratedRegex("^(?:W/)?\"[\\x21\\x23-\\x7e\\x80-\\xff]*\"$", RegexOptions.CultureInvariant)]
    private static partial Regex Tag();
}
