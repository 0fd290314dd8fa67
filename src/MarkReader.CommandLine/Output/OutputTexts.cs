using System.Globalization;
using System.Resources;

namespace MarkReader.CommandLine.Output;

/// <summary>What the program prints for people, from OutputTexts.resx.</summary>
internal static class OutputTexts
{
    private static readonly ResourceManager s_texts = new(typeof(OutputTexts).FullName!, typeof(OutputTexts).Assembly);

    /// <exception cref="MissingManifestResourceException">The resource has no such text.</exception>
    public static string Get(string name) => s_texts.GetString(name, CultureInfo.CurrentUICulture) ?? throw new MissingManifestResourceException(name);

    /// <summary>The text with its parts; their formats stand in the text, numbers are written with a point in every language.</summary>
    public static string Say(string name, params object?[] parts) => string.Format(CultureInfo.InvariantCulture, Get(name), parts);
}
