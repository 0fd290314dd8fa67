using MarkReader.Application.Measuring;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Auditing;

/// <summary>The result of an audit: photos in order of name, the figures over all, and those of each kind of scene.</summary>
public sealed record Audit(IReadOnlyList<AuditedPhoto> Photos, AuditSummary Summary, IReadOnlyList<AuditKind> Kinds);

/// <summary>Measures every photo of a folder that has a NAME.truth.json beside it, and compares.</summary>
public static class AuditFolder
{
    /// <summary>Photos come in the order of their names; those without a truth file are left out. As many are in work at a time as there are processor cores.</summary>
    /// <param name="camera">The profile of the camera that took all of them; a photo that it does not fit is told as refused.</param>
    /// <param name="progress">Told after each photo how many are done and how many there are; calls come one at a time.</param>
    public static Outcome<Audit> Run(string folder, Action<int, int>? progress = null, CameraProfile? camera = null)
    {
        if (!Directory.Exists(folder))
            return new Failure(AuditFailures.FolderMissing, AuditTexts.Word("auditFolder.thereNoFolder", folder), AuditTexts.Get("auditFolder.nameFolderWithPhotosAnd"));
        string[] truths;
        try
        {
            truths = [.. Directory.EnumerateFiles(folder, "*" + TruthFile.Ending).Order(StringComparer.Ordinal)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Failure(AuditFailures.FolderMissing, AuditTexts.Word("auditFolder.folderCannotBeRead", folder), AuditTexts.Get("auditFolder.checkPermissions"));
        }

        if (truths.Length == 0)
            return new Failure(AuditFailures.NothingToAudit, AuditTexts.Word("auditFolder.folderHasNoNameTruth", folder), AuditTexts.Get("auditFolder.putTruthFileBesideEach"));
        AuditedPhoto[] photos = PhotoRun.Each(truths.Length, i => Check(truths[i], camera), progress);
        return new Audit(photos, AuditSummary.Of(photos), AuditKind.AllOf(photos));
    }

    private static AuditedPhoto Check(string truthPath, CameraProfile? camera)
    {
        string stem = truthPath[..^TruthFile.Ending.Length];
        string truthName = Path.GetFileName(truthPath);
        if (PhotoNames.Endings.Select(e => stem + e).FirstOrDefault(File.Exists) is not { } photo)
            return new(truthName, null, [], 0, new(AuditFailures.TruthWithoutPhoto, AuditTexts.Word("auditFolder.hasNoPhotoBeside", truthName), AuditTexts.Get("auditFolder.addJpgPngOrWebp")));
        byte[] bytes;
        Truth? truth;
        try
        {
            if (!TruthFile.Parse(truthName, File.ReadAllBytes(truthPath)).TryGet(out truth, out Failure? bad))
                return new(truthName, null, [], 0, bad);
            bytes = File.ReadAllBytes(photo);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(truthName, null, [], 0, new(AuditFailures.PhotoUnreadable, AuditTexts.Word("auditFolder.orPhotoCannotBeRead", truthName), AuditTexts.Get("auditFolder.checkPermissionsBothFiles")));
        }

        return Compare(Path.GetFileName(photo), truth, PhotoMeasurer.Measure(bytes, truth.Measured.ApplyTo(new() { Camera = camera }).ValueOrThrow()));
    }

    private static AuditedPhoto Compare(string name, Truth truth, Outcome<PhotoMeasurement> outcome)
    {
        if (!outcome.TryGet(out PhotoMeasurement? measurement, out Failure? failure))
            return new(name, truth, [], 0, failure);
        return Compare(name, truth, measurement) with { CameraProfile = measurement.CameraProfile, CameraNotUsed = measurement.CameraNotUsed };
    }

    private static AuditedPhoto Compare(string name, Truth truth, PhotoMeasurement measurement)
    {
        // A photo whose truth holds no mark must be refused as such; elsewhere a missing mark is a missed one.
        if (measurement.Marks.Count == 0 && truth.Marks.Count == 0)
            return new(name, truth, [], 0, truth.ExpectedError is null ? null : MeasurePhoto.NoMark("", []));
        // Where a refusal is right, every mark that is stated is a false one.
        if (truth.ExpectedError is not null)
            return new(name, truth, [], measurement.Marks.Count, null);
        IReadOnlyList<MatchedMark> found = MarkMatching.Match(truth.Marks, measurement.Marks);
        return new(name, truth, found, measurement.Marks.Count - found.Count, null);
    }
}
