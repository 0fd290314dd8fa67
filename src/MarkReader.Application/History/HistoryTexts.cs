using System.Globalization;
using System.Resources;

namespace MarkReader.Application.History;

/// <summary>The words of a history, from HistoryTexts.resx.</summary>
internal static class HistoryTexts
{
    private static readonly ResourceManager s_texts = new(typeof(HistoryTexts).FullName!, typeof(HistoryTexts).Assembly);

    /// <exception cref="MissingManifestResourceException">The resource has no such text.</exception>
    public static string Get(string name) => s_texts.GetString(name, CultureInfo.InvariantCulture) ?? throw new MissingManifestResourceException(name);

    /// <summary>The text with its parts, which are written out already.</summary>
    public static string Say(string name, params string[] parts) => string.Format(CultureInfo.InvariantCulture, Get(name), parts);
}
