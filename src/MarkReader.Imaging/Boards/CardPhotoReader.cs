using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Boards;

/// <summary>From a photo's bytes to the places of a card's printed edges, for a check of the card.</summary>
public static class CardPhotoReader
{
    /// <summary>Reads one photo. Nothing is kept between calls; calls may run at the same time.</summary>
    /// <param name="name">The photo's name, for messages.</param>
    /// <param name="profile">Of the camera that took it; a photo that it does not fit is refused.</param>
    public static Outcome<CardPhoto> Read(ReadOnlyMemory<byte> bytes, string name, CameraProfile profile)
    {
        if (!PhotoHeaderReader.Read(bytes).TryGet(out PhotoHeader? header, out Failure? failure))
            return failure;
        if (PhotoTurn.OfOrientation(header.Exif.Orientation) is not { } turn)
            return new Failure(BoardFailures.Mirrored, ImagingTexts.Get("boardMeasurer.fileSaysThatPhotoMirrored"), ImagingTexts.Get("common.turnOffMirroringInCamera"));
        CameraTraits traits = LensChoice.TraitsOf(header);
        if (!profile.For(traits).TryGet(out CameraModel? camera, out failure) || !PhotoDecoder.DecodeGrey(bytes, header).TryGet(out GreyPhoto? photo, out failure))
            return failure;
        using (photo)
        {
            if (!CardFinder.Find(photo, new(null)).TryGet(out FoundCards? found, out failure))
                return failure;
            FoundCard card = found.InOrder[0];
            KnownLens lens = KnownLens.Of(profile, turn.Displayed(camera));
            if (!CardRegistrar.Register(photo, card.Kind, card.Rough, lens, evenLight: true).TryGet(out RegisteredPrint? print, out failure))
                return failure;
            return new CardPhoto(
                card.Kind,
                new(name, turn.ToSensor(photo.Size), PrintSightings.Of(print, card.Kind, photo.Size, turn)),
                camera,
                traits);
        }
    }
}
