using System.Text;
using MarkReader.Application.Aiming;
using MarkReader.Application.Cameras;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Drawing.Overlays;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>Works out aim points from photos that are kept, and keeps the results.</summary>
/// <param name="cameras">Whose profiles are used with the photos that their files name as theirs.</param>
public sealed class AimDesk(PhotoStore photos, AimStore aims, CameraStore cameras)
{
    /// <summary>
    /// Works out an aim and keeps it. When the photos cannot be measured, the refusal is kept like a result;
    /// when the inputs are wrong, nothing is kept and the failure returned.
    /// </summary>
    public Outcome<AimReceipt> Find(AimInputs inputs)
    {
        if (!Photos(inputs).TryGet(out AimPhotos? originals, out Failure? failure))
            return failure;
        if (!cameras.Known().TryGet(out MeasureOptions? known, out failure) || !(inputs.Card ?? CardInput.Nothing).ApplyTo(known).TryGet(out MeasureOptions? how, out failure))
            return failure;
        if (FindAim.Run(originals, inputs.Leg, how).TryGet(out AimFinding? finding, out failure))
        {
            string?[] used = [finding.NearView?.CameraProfile, finding.FarView.CameraProfile];
            cameras.Used(used);
            // With another profile it is another result: the earlier one stays.
            return aims.Keep(new(inputs with { Cameras = Named(used, known) }, ProgramVersion.Current, new KeptAnswer.Report(ReportJson.Write(AimReport.From(finding))), Draw(finding)));
        }

        return failure.Code.Kind == FailureKind.NotMeasurable
            ? aims.Keep(new(inputs, ProgramVersion.Current, new KeptAnswer.Refusal(failure), null))
            : failure;
    }

    private static string? Named(string?[] used, MeasureOptions known)
    {
        string[] profiles = [.. used.OfType<string>().Distinct().Select(name => $"{name} {known.KnownCameras.Last(p => p.Name == name).Made:O}")];
        return profiles.Length == 0 ? null : string.Join("; ", profiles);
    }

    private Outcome<AimPhotos> Photos(AimInputs inputs)
    {
        if (!photos.Read(inputs.NearPhoto).TryGet(out Original? near, out Failure? failure))
            return failure;
        if (inputs.First is { } first)
            return new AimPhotos.Both(near.Bytes, first);
        if (inputs is { IsOnePhoto: true, NearAt: { } nearAt, FarAt: { } farAt })
            return new AimPhotos.BothNamed(near.Bytes, nearAt, farAt);
        return photos.Read(inputs.FarPhoto).TryGet(out Original? far, out failure)
            ? new AimPhotos.NearAndFar(near.Bytes, far.Bytes) { NearAt = inputs.NearAt, FarAt = inputs.FarAt }
            : failure;
    }

    private static KeptOverlay Draw(AimFinding finding)
    {
        OverlayScene scene = new(
            finding.FarView.Photo,
            finding.FarView.Projection,
            finding.FarView.Card.ZoneSide,
            new OverlayContent.Aiming(Drawn(finding.Near), Drawn(finding.Far), finding.Solution.Aim));
        return new(Svg(scene, OverlayView.Photo), Svg(scene, OverlayView.Crop));
    }

    private static DrawnMark Drawn(Mark mark) => new(mark.Centre, mark.Diameter);

    private static string Svg(OverlayScene scene, OverlayView view) => Encoding.UTF8.GetString(SvgOverlay.Write(OverlayComposer.Compose(scene, view)));
}
