using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Service.Pages.Visits;

/// <summary>A photo whose fresh mark is to be chosen.</summary>
/// <param name="Found">The marks; null when the photo was refused.</param>
/// <param name="Refusal">Why it was.</param>
public sealed record PickView(string Photo, MarkCandidates? Found, Failure? Refusal)
{
    // About the marks, mm.
    private const double Margin = 9;

    /// <summary>The mark at the place that was shown, for the user to say yes to; null when none was shown.</summary>
    public ShownMark? Shown { get; init; }

    /// <summary>Whether the program sees the card, so that a mark can be shown to it.</summary>
    public bool CanTap => Refusal is null || Refusal.Code.Name == "NO_MARK";

    /// <summary>The part of the photo round the marks, px: left, top, width, height.</summary>
    public (double Left, double Top, double Width, double Height) Crop
    {
        get
        {
            double margin = Margin * Found!.Measurement.Card.PixelsPerMm;
            IReadOnlyList<MarkReport> marks = Found.Measurement.Marks;
            (double left, double right) = (marks.Min(m => m.X) - margin, marks.Max(m => m.X) + margin);
            (double top, double bottom) = (marks.Min(m => m.Y) - margin, marks.Max(m => m.Y) + margin);
            return (Math.Round(left), Math.Round(top), Math.Round(right - left), Math.Round(bottom - top));
        }
    }

    internal static PickView? Of(PhotoStore photos, KeptVisit visit, VisitAdvice advice, string photo)
    {
        if (!photos.Find(photo).TryGet(out _, out _))
            return null;
        return MarkCandidates.Of(photos, visit, advice, photo).TryGet(out MarkCandidates? found, out Failure? failure) ? new(photo, found, null) : new(photo, null, failure);
    }
}
