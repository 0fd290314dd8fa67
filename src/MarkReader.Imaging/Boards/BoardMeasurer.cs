using MarkReader.Cameras.Models;
using MarkReader.Cards;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Boards;

/// <summary>From a photo's bytes to the places of the board's printed edges.</summary>
public static class BoardMeasurer
{
    /// <summary>Part of a board that shows fewer markers says too little of the lens.</summary>
    private const int MarkersNeeded = 6;

    /// <summary>Longest side of the copies that are searched, px.</summary>
    private static readonly int[] s_sides = [1100, 2100];

    /// <summary>Measures one photo. Nothing is kept between calls; calls may run at the same time.</summary>
    /// <param name="name">The photo's name, for messages.</param>
    public static Outcome<BoardPhoto> Measure(ReadOnlyMemory<byte> bytes, string name)
    {
        if (!PhotoHeaderReader.Read(bytes).TryGet(out PhotoHeader? header, out Failure? failure))
            return failure;
        if (PhotoTurn.OfOrientation(header.Exif.Orientation) is not { } turn)
            return new Failure(BoardFailures.Mirrored, ImagingTexts.Get("boardMeasurer.fileSaysThatPhotoMirrored"), ImagingTexts.Get("common.turnOffMirroringInCamera"));
        if (!PhotoDecoder.DecodeGrey(bytes, header).TryGet(out GreyPhoto? photo, out failure))
            return failure;
        using (photo)
        {
            CalibrationBoard board = CalibrationBoard.Sheet;
            if (Find(photo) is not { } found)
                return new Failure(BoardFailures.NoBoard, ImagingTexts.Get("boardMeasurer.calibrationBoardNotSeenIn"), ImagingTexts.Get("boardMeasurer.photographPrintedBoardSharpAnd"));
            if (found.Markers.Count < MarkersNeeded)
                return new Failure(BoardFailures.PartlySeen, ImagingTexts.Word("boardMeasurer.onlyBoardMarkersCanBe", found.Markers.Count, board.Markers.Count, MarkersNeeded), ImagingTexts.Get("boardMeasurer.takePhotoAgainSharpAnd"));
            if (!CardRegistrar.Register(photo, board, found.Rough, evenLight: true).TryGet(out RegisteredPrint? print, out failure))
                return failure;
            return new BoardPhoto(
                new(name, turn.ToSensor(photo.Size), PrintSightings.Of(print, board, photo.Size, turn)),
                LensChoice.TraitsOf(header),
                found.Markers.Count,
                print.Residual);
        }
    }

    private static MarkerGroup<CalibrationBoard>? Find(GreyPhoto photo)
    {
        MarkerGroup<CalibrationBoard>? best = null;
        foreach (int side in s_sides)
        {
            double factor = Math.Min(1, (double)side / Math.Max(photo.Size.Width, photo.Size.Height));
            using Mat reduced = new();
            Cv2.Resize(photo.Pixels, reduced, new Size(), factor, factor, InterpolationFlags.Area);
            IReadOnlyList<MarkerGroup<CalibrationBoard>> groups = MarkerConsensus.Group(MarkerFinder.Find(reduced, new(factor)), CalibrationBoard.OfMarker);
            MarkerGroup<CalibrationBoard>? found = groups.Count > 0 ? groups[0] : null;
            if ((found?.Markers.Count ?? 0) > (best?.Markers.Count ?? 0))
                best = found;
            if (best?.Markers.Count >= MarkersNeeded || factor >= 1)
                break;
        }

        return best;
    }
}
