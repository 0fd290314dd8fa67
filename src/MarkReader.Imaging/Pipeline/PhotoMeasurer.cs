using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Photos;
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
            if (!CardFinder.Find(photo, trace).TryGet(out FoundCard? found, out failure))
                return failure;
            if (!CardRegistrar.Register(photo, found).TryGet(out RegisteredCard? card, out failure))
                return failure;
            trace.Edges(photo, card);
            ZoneMap light = ZoneRectifier.Rectify(photo, card);
            IReadOnlyList<Mark> marks = MarkFinder.Find(light, card, trace);
            CardSighting sighting = new(
                card.Kind.Name,
                Length.FromMillimetres(card.Kind.ZoneSide),
                MarkerCheck.CountSeen(photo, card),
                card.PixelsPerMm,
                CardTilt.Of(card, photo.Size, header),
                card.Residual);
            return new PhotoMeasurement(photo.Size, sighting, card.View, marks, PhotoWarnings.Of(found, card, sighting, marks));
        }
    }
}
