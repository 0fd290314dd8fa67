using System.Globalization;
using System.Text;
using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>A leg in progress drawn over a photo of its target, from what was measured in the photo before.</summary>
public static class VisitPhotoOverlay
{
    // A mark of the visit this near to one of the photo is that one, mm.
    private const double Same = 0.02;

    private const double UsualDiameter = 1.5;

    /// <summary>The drawing for the whole photo and for the part about the card, as SVG in px of the photo.</summary>
    /// <param name="measurement">What is kept of the photo.</param>
    /// <param name="advice">What was advised on this machine and these events.</param>
    /// <param name="leg">The leg whose target the photo shows; "2" for the head's tape.</param>
    /// <returns>Null when the photo could not be measured, was measured by a version that kept no projection, or when the machine has no such leg.</returns>
    public static KeptOverlay? Of(
        KeptMeasurement measurement, VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice advice, string leg, VisitPictureStyle? style = null)
    {
        if (Scene(measurement, setup, events, advice, leg, style) is not { } scene)
            return null;
        string Draw(OverlayView view) => Encoding.UTF8.GetString(SvgOverlay.Write(OverlayComposer.Compose(scene, view)));
        return new(Draw(OverlayView.Photo), Draw(OverlayView.Crop));
    }

    /// <summary>What <see cref="Of"/> draws.</summary>
    public static OverlayScene? Scene(
        KeptMeasurement measurement, VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice advice, string leg, VisitPictureStyle? style = null)
    {
        if (measurement.Answer is not KeptAnswer.Report kept || setup.Legs.FirstOrDefault(l => l.Name == leg) is not { } stated)
            return null;
        MeasureReport report = JsonSerializer.Deserialize<MeasureReport>(kept.Json, ReportJson.Options)!;
        PhotoSize size = new(report.Photo.Width, report.Photo.Height);
        if (report.Projection is not { } view || view.Camera.Project(size) is not { } projection)
            return null;
        PictureSource source = new(setup, VisitMarks.Of(setup, events), advice, style ?? VisitPictureStyle.Default);
        return new(size, projection, Length.FromMillimetres(view.ZoneSide), Content(source, LegSight.Of(source, stated), report.Marks)) { Inches = source.Style.Style.Numbers.Inches };
    }

    private static OverlayContent.Leg Content(PictureSource source, LegSight sight, IReadOnlyList<MarkReport> inPhoto)
    {
        VisitPictureWords words = source.Words;
        PictureWords inside = source.Style.Style.Words;
        double usual = inPhoto.Count > 0 ? inPhoto.Select(m => m.Diameter).Order().ElementAt(inPhoto.Count / 2) : UsualDiameter;
        LegMarkShown Shown(LegMark mark)
        {
            double diameter = inPhoto.FirstOrDefault(m => mark.At.Point.DistanceTo(new(m.U, m.V)) < Same)?.Diameter ?? usual;
            bool far = sight.Role(mark) == MarkRole.Far;
            string number = mark.Number.ToString(CultureInfo.InvariantCulture);
            return new(new(mark.At, Length.FromMillimetres(diameter)), far, $"{number} {(far ? words.Far : words.Near)}", mark.Counts);
        }

        string[] aim = sight.ToGo is { } toGo ? [words.AimShort, PictureWords.Fill(inside.ToGo, source.Style.Style.Numbers.Measured(toGo))] : [words.AimShort];
        return new(
            [.. sight.Marks.Select(Shown)],
            sight.Aim is { } point ? new(point, aim) : null,
            [.. sight.Expected.Select(e => new PointShown(e, [inside.Next]))],
            sight.Moving?.At.Point,
            VisitPictureWords.Fill(words.TargetTitle, sight.Leg.Name),
            LegPictures.Description(source, sight).Whole);
    }
}
