using MarkReader.Alignment.Threads;
using MarkReader.Quantities;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Machines;

/// <summary>What the form's lists offer: values and words.</summary>
internal static class Choices
{
    private static readonly double[] s_uncertainties = [0.5, 1, 2, 5];

    private static readonly string[] s_screws = ["A", "B", "C"], s_corners = ["upperLeft", "upperRight", "lowerLeft", "lowerRight"];

    public static IReadOnlyList<(string Value, string Words)> Uncertainties(EditModel page, IStringLocalizer<MachineTexts> t) =>
    [
        ("", t["uncertainty.none", page.Figures.Short(1)]),
        .. s_uncertainties.Select(u => (Words.Plain(u), t["uncertainty." + Words.Plain(u), page.Figures.Short(u)].Value)),
    ];

    public static IReadOnlyList<(string Value, string Words)> Incidences(IStringLocalizer<MachineTexts> t) =>
        [("", t["incidence.none"]), ("0", t["incidence.0"]), ("45", t["incidence.45"]), ("-45", t["incidence.-45"])];

    public static IReadOnlyList<(string Value, string Words)> Folds(IStringLocalizer<MachineTexts> t) =>
        [("", t["fold.none"]), ("left", t["fold.left"]), ("right", t["fold.right"])];

    /// <summary>The pivot, screws A to C, and screws that this frame calls otherwise.</summary>
    public static IReadOnlyList<(string Value, string Words)> Corner(EditModel page, string leg, IStringLocalizer<MachineTexts> t)
    {
        const string screw = "screw ";
        IEnumerable<string> own = s_corners.Select(c => page.Form[$"{leg}-{c}"]).Where(v => v.StartsWith(screw, StringComparison.Ordinal)).Select(v => v[screw.Length..]);
        return [("", t["corner.none"]), ("pivot", t["corner.pivot"]), .. s_screws.Union(own).Select(s => (screw + s, t["corner.screw", s].Value))];
    }

    /// <summary>Metric threads with their pitch, unified ones by their name, which says it.</summary>
    public static IReadOnlyList<(string Value, string Words)> Threads(EditModel page, IStringLocalizer<MachineTexts> t) =>
    [
        ("", t["thread.none", page.Figures.Short(0.7)]),
        .. ScrewThreads.All.Select(s => (s.Name, s.Series == ThreadSeries.MetricCoarse ? t["thread.pitch", s.Name, Pitch(page, s.Pitch)].Value : s.Name)),
    ];

    private static string Pitch(EditModel page, Length pitch) => page.Figures.Short(pitch.Millimetres);
}
