using System.Globalization;
using System.Resources;

namespace MarkReader.Application.Pictures;

/// <summary>The titles and descriptions of a visit's pictures, from VisitPictureTexts.resx.</summary>
internal static class VisitPictureTexts
{
    private static readonly ResourceManager s_texts = new(typeof(VisitPictureTexts).FullName!, typeof(VisitPictureTexts).Assembly);

    /// <exception cref="MissingManifestResourceException">The resource has no such text.</exception>
    public static string Get(string name) => s_texts.GetString(name, CultureInfo.CurrentUICulture) ?? throw new MissingManifestResourceException(name);
}
