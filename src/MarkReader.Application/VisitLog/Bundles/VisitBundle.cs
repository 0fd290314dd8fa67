using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>A whole visit from one file: a ZIP file with visit.json and the original photos. Checked when it is opened; photos are read one by one.</summary>
public sealed class VisitBundle : IRecordPhotos, IDisposable
{
    private readonly BundleArchive _archive;

    private VisitBundle(BundleArchive archive, BundledVisit visit) => (_archive, Visit) = (archive, visit);

    public BundledVisit Visit { get; }

    /// <summary>Whether the file begins like a ZIP file.</summary>
    public static bool Is(ReadOnlySpan<byte> bytes) => bytes.StartsWith("PK\u0003\u0004"u8);

    /// <summary>The visit, when everything in the file is as it should be: each event, and each photo against its digest.</summary>
    /// <param name="file">A stream that can seek; it stays open.</param>
    public static Outcome<VisitBundle> Open(Stream file)
    {
        if (!BundleArchive.Open(file).TryGet(out BundleArchive? archive, out Failure? failure))
            return failure;
        if (archive.ReadVisit().TryGet(out byte[]? bytes, out failure) && BundleReader.Read(bytes).TryGet(out BundledVisit? visit, out failure) && (failure = Check(archive, visit)) is null)
        {
            archive.Rewind();
            return new VisitBundle(archive, visit);
        }

        archive.Dispose();
        return failure;
    }

    /// <summary>The original photo.</summary>
    public Outcome<byte[]> Photo(string id) => _archive.ReadPhoto(id);

    MeasureReport? IRecordPhotos.Measured(string id) => Visit.Photos.FirstOrDefault(p => p.Id == id)?.Measurement is { } measurement ? KeptRecordPhotos.ReadReport(measurement.Report) : null;

    ReadOnlyMemory<byte>? IRecordPhotos.Bytes(string id) => Visit.Photos.Any(p => p.Id == id) && Photo(id).TryGet(out byte[]? bytes, out _) ? bytes : null;

    public void Dispose() => _archive.Dispose();

    private static Failure? Check(BundleArchive archive, BundledVisit visit)
    {
        if (archive.Photos.Count != visit.Photos.Count)
            return new Failure(BundleFailures.PhotoWrong, VisitLogTexts.Get("visitBundle.fileDoesNotHoldPhotos"), VisitLogTexts.Get("common.makeFileAgainWhereVisit"));
        foreach (string id in visit.Photos.Select(p => p.Id))
        {
            if (!archive.ReadPhoto(id).TryGet(out byte[]? bytes, out Failure? failure))
                return failure;
            if (PhotoFiles.Digest(bytes) != id)
                return new Failure(BundleFailures.PhotoWrong, VisitLogTexts.Word("visitBundle.photoWasChanged", id[..12]), VisitLogTexts.Get("common.makeFileAgainWhereVisit"));
        }

        return null;
    }
}
