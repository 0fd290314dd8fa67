using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Pictures;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;

namespace MarkReader.Service.Pages.Visits;

/// <summary>The latest photo of a target with near, far, aim and where the mark should go drawn over it.</summary>
/// <param name="Leg">The leg whose target it shows.</param>
public sealed record LegPhotoView(string Leg, AimPicture Picture)
{
    internal static LegPhotoView? Of(KeptVisit kept, Visit visit, VisitAdvice advice, PhotoStore photos, VisitGallery gallery)
    {
        string leg = advice.State.Current switch
        {
            VisitStep.LegOne => VisitLeg.One,
            VisitStep.LegThree => VisitLeg.Three,
            _ => VisitLeg.Two,
        };
        string? photo = kept.Events.Zip(visit.Events).Reverse().Where(e => e.First.Photo is not null && Shows(e.Second, leg)).Select(e => e.First.Photo).FirstOrDefault();
        return photo is not null
            && photos.FindMeasurement(photo).TryGet(out KeptMeasurement? measurement, out _)
            && gallery.Over(measurement, leg) is { } overlay
            ? new(leg, AimPicture.From(overlay, photo))
            : null;
    }

    // The head's tape shows leg 2 and the survey.
    private static bool Shows(VisitEvent e, string leg) => e switch
    {
        VisitEvent.Mark mark => mark.Leg == leg,
        VisitEvent.Survey => leg == VisitLeg.Two,
        _ => false,
    };
}
