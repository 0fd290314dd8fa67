using System.Globalization;
using System.Resources;

namespace MarkReader.Quantities;

/// <summary>The texts of a resource file that is named after its class, in the reader's language, in English where that has none.</summary>
/// <typeparam name="T">The class: NAME.cs beside NAME.resx.</typeparam>
public abstract class Texts<T>
    where T : Texts<T>
{
    private static readonly ResourceManager s_texts = new(typeof(T).FullName!, typeof(T).Assembly);

    protected Texts()
    {
    }

#pragma warning disable CA1000 // They are called through the class that is named: CameraTexts.Get.
    /// <exception cref="MissingManifestResourceException">The resource has no such text.</exception>
    public static string Get(string name) => s_texts.GetString(name, CultureInfo.CurrentUICulture) ?? throw new MissingManifestResourceException(name);

    /// <summary>The text with its parts; their formats stand in the text, numbers are written with a point in every language.</summary>
    public static string Say(string name, params object?[] parts) => string.Format(CultureInfo.InvariantCulture, Get(name), parts);

    /// <summary>As <see cref="Say"/>, with lengths that can be told in inches.</summary>
    /// <param name="parts">Lengths as <see cref="SaidLength"/>.</param>
    public static Wording Word(string name, params ReadOnlySpan<object?> parts) => Wording.Of(Get(name), parts);
#pragma warning restore CA1000
}
