using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Uploads;

namespace MarkReader.Service.Pages;

/// <summary>The fields of a form for what was measured of the printed card and the tape.</summary>
/// <param name="Prefix">Of their ids, where a page has several such forms.</param>
/// <param name="Text">What was typed in a field, or null.</param>
/// <param name="Wrong">What is wrong with a field, or null.</param>
public sealed record CardReadingsView(string Prefix, Figures Figures, Func<string, string?> Text, Func<string, Failure?> Wrong)
{
    /// <summary>Whether anything was typed in them, or is wrong.</summary>
    public bool Open => CardFields.Names.Any(name => !string.IsNullOrWhiteSpace(Text(name)) || Wrong(name) is not null);
}
