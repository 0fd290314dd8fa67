using System.Globalization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Pictures;
using MarkReader.Application.VisitLog;

namespace MarkReader.Service.Pages.Visits;

/// <summary>A picture of a visit on its page.</summary>
/// <param name="IsNow">Whether it belongs to the step at hand.</param>
public sealed record PictureView(string Name, string Address, string Description, double Width, double Height, bool IsNow)
{
    internal static IReadOnlyList<PictureView> All(KeptVisit visit, VisitAdvice advice, VisitGallery gallery)
    {
        string[] now = OfStep(advice.State.Current);
        return [.. gallery.Now()
            .Select(p => new PictureView(
                p.Name,
                string.Create(CultureInfo.InvariantCulture, $"/api/visits/{visit.Entry.Id}/pictures/{p.Name}.svg?v={visit.Entry.Version}"),
                p.Description,
                p.Drawing.Width,
                p.Drawing.Height,
                now.Contains(p.Name)))
            .OrderBy(p => !p.IsNow)];
    }

    private static string[] OfStep(VisitStep? step) => step switch
    {
        VisitStep.LegOne => ["target-1", "screw"],
        VisitStep.LegTwo => ["target-2", "screw"],
        VisitStep.LegThree => ["target-3", "screw"],
        VisitStep.Survey => ["bed", "frame"],
        VisitStep.Centring => ["aperture"],
        _ => ["bed", "aperture"],
    };
}
