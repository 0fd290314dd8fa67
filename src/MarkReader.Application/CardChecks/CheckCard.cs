using MarkReader.Application.Cameras;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Profiles;
using MarkReader.Cards;
using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>From photos of a printed card, taken from several sides, to what the card does to marks.</summary>
public static class CheckCard
{
    /// <summary>Photos that one check may have.</summary>
    public const int MostPhotos = 24;

    /// <summary>Measures the photos one after the other; those that show no usable card or come twice are told and left out.</summary>
    /// <param name="count">How many photos there are.</param>
    /// <param name="photos">Read when they are needed, so that one is in memory at a time.</param>
    /// <param name="profile">Of the camera that took them.</param>
    /// <param name="progress">Told after each photo how many are done.</param>
    public static Outcome<CardFinding> Run(int count, IEnumerable<BoardPhotoFile> photos, CameraProfile profile, CardCheckInput input, Action<int>? progress = null)
    {
        if (count > MostPhotos)
            return new Failure(CardCheckInputFailures.TooManyPhotos, CardCheckTexts.Word("run.manyPhotos", count, MostPhotos), CardCheckTexts.Get("run.manyPhotosHint"));
        if (!input.Read().TryGet(out CheckedReadings? readings, out Failure? failure))
            return failure;
        List<CardPhoto> used = [];
        List<RefusedPhoto> refused = [];
        SeenFiles seen = new();
        int done = 0;
        foreach (BoardPhotoFile file in photos)
        {
            failure = seen.Repeated(file);
            if (failure is null && CardPhotoReader.Read(file.Bytes, file.Name, profile).TryGet(out CardPhoto? photo, out failure))
                used.Add(photo);
            else
                refused.Add(new(file.Name, failure.Code == ProfileFailures.Misfit ? failure with { Hint = CardCheckTexts.Get("run.misfitHint") } : failure));
            progress?.Invoke(++done);
        }

        return Of(used, refused, profile, input, readings);
    }

    private static Outcome<CardFinding> Of(List<CardPhoto> used, List<RefusedPhoto> refused, CameraProfile profile, CardCheckInput input, CheckedReadings readings)
    {
        if (used.Count < CardCheck.LeastViews && refused.Count > 0)
        {
            Failure first = refused[0].Failure;
            return first with { Message = CardCheckTexts.Say("run.refused", used.Count, used.Count + refused.Count, CardCheck.LeastViews, refused[0].Name, first.Message) };
        }

        if (used.Count == 0)
            return new Failure(CardCheckFailures.TooFewViews, CardCheckTexts.Word("run.noPhotos", CardCheck.LeastViews), CardCheckTexts.Get("run.noPhotosHint"));
        CardKind kind = used[0].Kind;
        if (used.FirstOrDefault(p => p.Kind.Name != kind.Name) is { } other)
            return new Failure(CardCheckInputFailures.KindsDiffer, CardCheckTexts.Word("run.kinds", other.View.Name, other.Kind.Name, used[0].View.Name, kind.Name), CardCheckTexts.Get("run.kindsHint"));
        RulerScale? rulers = null;
        if (readings.Rulers is { } read && !CardRulers.Scale(read, kind).TryGet(out rulers, out Failure? failure))
            return failure;
        CheckedPrint print = new(Length.FromMillimetres(kind.OuterSide), Length.FromMillimetres(kind.ZoneSide), rulers);
        return CardCheck.Check([.. used.Select(p => p.View)], KnownCamera.Of(profile, used[0].Camera), print).TryGet(out CheckedCard? card, out failure)
            ? new CardFinding(profile.Name, kind, card, readings.Rulers, input.LimitOrUsual, refused)
            : failure;
    }
}
