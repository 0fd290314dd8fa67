using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>The pictures of a visit that is kept.</summary>
public sealed class VisitGallery
{
    private const string Before = "before-";

    private readonly Visit _visit;
    private readonly VisitAdvice _advice;
    private readonly VisitPictureStyle _style;

    private VisitGallery(Visit visit, VisitAdvice advice, VisitPictureStyle style) => (_visit, _advice, _style) = (visit, advice, style);

    /// <summary>The failure of its advice, when this version of the program cannot use the visit.</summary>
    public static Outcome<VisitGallery> Of(KeptVisit visit, VisitPictureStyle? style = null) =>
        VisitFile.Read(visit.FileBytes()).TryGet(out Visit? read, out Failure? failure) && VisitAdviser.Advise(read.Setup, read.Events).TryGet(out VisitAdvice? advice, out failure)
            ? new VisitGallery(read, advice, style ?? VisitPictureStyle.Default)
            : failure;

    /// <summary>As it stands now, then as it was found.</summary>
    public IReadOnlyList<VisitPicture> All() => [.. VisitPictures.Of(_visit.Setup, _visit.Events, _advice, _style), .. VisitPictures.Before(_visit.Setup, _visit.Events, _style)];

    /// <summary>As it stands now.</summary>
    public IReadOnlyList<VisitPicture> Now() => VisitPictures.Of(_visit.Setup, _visit.Events, _advice, _style);

    /// <returns>Null when there is no picture of this name now.</returns>
    public VisitPicture? Find(string name) =>
        (name.StartsWith(Before, StringComparison.Ordinal) ? VisitPictures.Before(_visit.Setup, _visit.Events, _style) : VisitPictures.Of(_visit.Setup, _visit.Events, _advice, _style))
        .FirstOrDefault(p => p.Name == name);

    /// <summary>A leg in progress over a photo of its target (<see cref="VisitPhotoOverlay"/>).</summary>
    /// <param name="measurement">What is kept of the photo.</param>
    /// <returns>Null when nothing can be drawn over it.</returns>
    public KeptOverlay? Over(KeptMeasurement measurement, string leg) => VisitPhotoOverlay.Of(measurement, _visit.Setup, _visit.Events, _advice, leg, _style);
}
