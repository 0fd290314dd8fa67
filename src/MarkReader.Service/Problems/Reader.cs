using MarkReader.Application.Reports;
using MarkReader.Service.Display;

namespace MarkReader.Service.Problems;

/// <summary>How a script of the pages wants sentences: in the unit and with the decimal sign that its reader has chosen. Numbers stay mm, and so do sentences for everyone else.</summary>
internal static class Reader
{
    private const string Header = "MarkReader-Display";

    /// <summary>The reader's choices; null when sentences are not for a page.</summary>
    public static Figures? Of(HttpContext context) => context.Request.Headers.ContainsKey(Header) ? new(Preferences.Read(context.Request)) : null;

    public static MeasureReport Say(this Figures figures, MeasureReport report) => report with
    {
        Warnings = [.. report.Warnings.Select(w => w with { Message = figures.Sentence(w.Message) })],
    };

    public static SpotsReport Say(this Figures figures, SpotsReport report) => report with
    {
        Doubtful = [.. report.Doubtful.Select(s => s with { Reason = figures.Sentence(s.Reason) })],
    };
}
