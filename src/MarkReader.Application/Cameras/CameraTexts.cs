using System.Globalization;
using System.Resources;

namespace MarkReader.Application.Cameras;

/// <summary>The words about cameras and their calibration, from CameraTexts.resx.</summary>
public static class CameraTexts
{
    private static readonly ResourceManager s_texts = new(typeof(CameraTexts).FullName!, typeof(CameraTexts).Assembly);

    /// <exception cref="MissingManifestResourceException">The resource has no such text.</exception>
    public static string Get(string name) => s_texts.GetString(name, CultureInfo.CurrentUICulture) ?? throw new MissingManifestResourceException(name);

    /// <summary>The text with its parts; numbers are written with a point in every language.</summary>
    public static string Say(string name, params object?[] parts) => string.Format(CultureInfo.InvariantCulture, Get(name), parts);
}
