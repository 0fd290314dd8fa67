using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Quality;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>The whole way from a photo's bytes to the marks in the card frame; the stages are put together here and nowhere else.</summary>
public static class PhotoMeasurer
{
    /// <summary>Measures one photo. Nothing is kept between calls; calls may run at the same time.</summary>
    public static Outcome<PhotoMeasurement> Measure(ReadOnlyMemory<byte> bytes, MeasureOptions? options = null)
    {
        StageTrace trace = new(options?.DebugDirectory);
        if (!PhotoHeaderReader.Read(bytes).TryGet(out PhotoHeader? header, out Failure? failure))
            return failure;
        if (!PhotoDecoder.DecodeGrey(bytes, header).TryGet(out GreyPhoto? photo, out failure))
            return failure;
        using (photo)
        {
            if (TapCheck.Outside(photo.Size, options?.Taps ?? []) is { } outside)
                return outside;
            // What no camera's profile would mend is told first.
            if (!CardFinder.Find(photo, trace).TryGet(out FoundCards? sighted, out failure))
                return failure;
            if (!LensChoice.For(header, options ?? new()).TryGet(out LensChoice? lens, out failure))
                return failure;
            Outcome<PhotoMeasurement> first = MeasureCard(photo, sighted.InOrder[0], lens, options, trace);
            if (sighted.InOrder.Count == 1 || HasMarks(first))
                return first;
            // Of several cards the one with marks is meant.
            return sighted.InOrder.Skip(1).Select(c => MeasureCard(photo, c, lens, options, trace)).FirstOrDefault(HasMarks) ?? first;
        }
    }

    private static bool HasMarks(Outcome<PhotoMeasurement> outcome) => outcome.TryGet(out PhotoMeasurement? measurement, out _) && measurement.Marks.Count > 0;

    private static Outcome<PhotoMeasurement> MeasureCard(GreyPhoto photo, FoundCard sighted, LensChoice lens, MeasureOptions? options, StageTrace trace)
    {
        if (!CardRegistrar.Register(photo, sighted, lens.Lens).TryGet(out RegisteredCard? card, out Failure? failure))
            return failure;
        trace.Edges(photo, card);
        if (!PrintScale.From(options?.Rulers, card.Kind).TryGet(out PrintScale? print, out failure))
            return failure;
        IReadOnlyList<PixelPoint> taps = options?.Taps ?? [];
        if (TapCheck.Outside(card, taps) is { } elsewhere)
            return elsewhere;
        TapeHeight tape = options?.Tape ?? TapeHeight.OnCard;
        MarkBudget budget = new(card, print, tape.Height.Millimetres, tape.StandardUncertainty.Millimetres);
        ZoneMap light = ZoneRectifier.Rectify(photo, card);
        FoundMarks found = taps.Count > 0
            ? MarkFinder.At(light, card, [.. taps.Select(card.View.ToCard)], trace)
            : MarkFinder.Find(light, card, trace);
        Mark[] marks = [.. found.Marks.Select(budget.ToMark).OrderBy(m => m.Centre.Point.U)];
        CardSighting sighting = new(
            card.Kind.Name,
            Length.FromMillimetres(card.Kind.ZoneSide),
            MarkerCheck.CountSeen(photo, card),
            card.PixelsPerMm,
            card.View.Camera.SightAt(CardPoint.Origin),
            card.Residual);
        DoubtfulSpot[] doubtful = [.. found.Doubtful.Select(budget.ToSpot)];
        PhotoQuality quality = QualityReading.Of(photo, card, sighting, light);
        return new PhotoMeasurement(
            photo.Size,
            sighting,
            budget.Projection,
            new(card.View.Camera.Foot, Length.FromMillimetres(card.View.Camera.Height)),
            marks,
            doubtful,
            quality,
            [.. PhotoWarnings.Of(sighted, quality, marks, doubtful, found.Doubts), .. lens.Warnings(card.LensDiffers)])
        {
            CameraProfile = card.LensDiffers ? null : lens.Profile,
        };
    }
}
