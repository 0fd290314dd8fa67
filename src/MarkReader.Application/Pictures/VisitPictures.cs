using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>The pictures of a visit. One that has no data yet is left out.</summary>
public static class VisitPictures
{
    /// <summary>
    /// As it stands now: target-1, target-2, target-3, screw (when a screw is to be turned), bed, frame (when a twist was found), aperture, budget-1 to budget-3.
    /// </summary>
    /// <param name="advice">What was advised on this machine and these events.</param>
    public static IReadOnlyList<VisitPicture> Of(VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice advice, VisitPictureStyle? style = null)
    {
        PictureSource source = new(setup, VisitMarks.Of(setup, events), advice, style ?? VisitPictureStyle.Default);
        VisitPicture?[] pictures =
        [
            .. setup.Legs.Select(l => LegPictures.Target(source, l)),
            ScrewPicture.Of(source),
            SurveyPictures.Bed(source),
            SurveyPictures.Frame(source),
            AperturePicture.Of(source),
            .. setup.Legs.Select(l => LegPictures.Budget(source, l)),
        ];
        return [.. pictures.OfType<VisitPicture>()];
    }

    /// <summary>
    /// As it was found, for the record: before-target-1 to before-target-3 before the leg's first turn, before-bed and before-frame at the end of the first survey,
    /// before-aperture before the target or the tube was first moved. What has not been changed since is left out.
    /// </summary>
    public static IReadOnlyList<VisitPicture> Before(VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitPictureStyle? style = null)
    {
        VisitPicture? At(int? count, Func<PictureSource, VisitPicture?> draw)
        {
            VisitEvent[] first = [.. events.Take(count ?? 0)];
            return count is not null && VisitAdviser.Advise(setup, first).TryGet(out VisitAdvice? advice, out _)
                ? draw(new(setup, VisitMarks.Of(setup, first), advice, style ?? VisitPictureStyle.Default) { IsBefore = true })
                : null;
        }

        int? survey = FirstChange.AfterSurvey(setup, events);
        VisitPicture?[] pictures =
        [
            .. setup.Legs.Select(l => At(FirstChange.OfLeg(events, l.Name), s => LegPictures.Target(s, l))),
            At(survey, SurveyPictures.Bed),
            At(survey, SurveyPictures.Frame),
            At(FirstChange.OfCentring(events), AperturePicture.Of),
        ];
        return [.. pictures.OfType<VisitPicture>().Select(p => p with { Name = "before-" + p.Name })];
    }
}

/// <summary>What the pictures of a visit are made from.</summary>
/// <param name="Marks">The marks as they stand.</param>
internal sealed record PictureSource(VisitSetup Setup, VisitMarks Marks, VisitAdvice Advice, VisitPictureStyle Style)
{
    /// <summary>Whether it is the visit as it was found: then nothing that is to be done is drawn.</summary>
    public bool IsBefore { get; init; }

    public VisitPictureWords Words => Style.Words;

    public string Text(double millimetres) => Style.Style.Numbers.Measured(Length.FromMillimetres(millimetres));

    public string Round(Length length) => Style.Style.Numbers.Round(length);
}
