using MarkReader.Application.Reports;
using MarkReader.Cards;
using MarkReader.Drawing.Photos;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>Gathers the photos of a record, one by one, so that no two of them are decoded at the same time.</summary>
internal sealed class RecordPhotoAlbum(IRecordPhotos photos)
{
    private const int Most = 200;

    // Of the card's side, so that the card is seen wherever the mark lies in its zone.
    private const double CutPart = 0.75;

    // An event has the numbers of its mark, mm.
    private const double Same = 1e-9;

    private readonly Dictionary<string, int?> _numbers = [];
    private readonly Dictionary<string, MeasureReport?> _reports = [];
    private readonly List<RecordPhoto> _photos = [];

    public IReadOnlyList<RecordPhoto> Photos => _photos;

    /// <summary>Photos that are named and could not be had, or are more than a record holds.</summary>
    public int Missing => _numbers.Values.Count(n => n is null);

    /// <summary>The mark that an event was filled in from; null when that is not known.</summary>
    public MarkReport? Find(string? photo, CardPoint place) => Report(photo)?.Marks.FirstOrDefault(m => place.DistanceTo(new(m.U, m.V)) < Same);

    /// <summary>The number of a photo in the record; null without one.</summary>
    /// <param name="mark">Ringed in it.</param>
    public int? Number(string? photo, MarkReport? mark)
    {
        if (photo is null)
            return null;
        if (!_numbers.TryGetValue(photo, out int? number))
        {
            number = Add(photo, mark);
            _numbers.Add(photo, number);
        }

        return number;
    }

    private MeasureReport? Report(string? photo)
    {
        if (photo is null)
            return null;
        if (!_reports.TryGetValue(photo, out MeasureReport? report))
        {
            report = photos.Measured(photo);
            _reports.Add(photo, report);
        }

        return report;
    }

    private int? Add(string id, MarkReport? mark)
    {
        if (_photos.Count >= Most || photos.Bytes(id) is not { } bytes || !PhotoDecoder.DecodeColour(bytes).TryGet(out ColourPhoto? photo, out _))
            return null;
        (PixelPoint, double)? cut = null, ring = null;
        if (mark is not null && Report(id)?.Card is { PixelsPerMm: > 0 } card)
        {
            PixelPoint centre = new(mark.X, mark.Y);
            if (CardKinds.Find(card.Kind) is { } kind)
                cut = (centre, CutPart * kind.OuterSide * card.PixelsPerMm);
            ring = (centre, 0.9 * mark.Diameter * card.PixelsPerMm);
        }

        SmallPhoto small = SmallPhoto.Of(new(photo.Size, photo.Rgba), cut, ring);
        _photos.Add(new(_photos.Count + 1, id, small.Jpeg, small.Size, small.IsCut));
        return _photos.Count;
    }
}
