using System.Buffers.Binary;
using System.IO.Compression;
using System.Text.RegularExpressions;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>The ZIP file of a visit, read with bounds. Names in it only tell the parts apart: no path is ever made from one.</summary>
internal sealed partial class BundleArchive : IDisposable
{
    public const string VisitName = "visit.json";

    private const int EndLength = 22, LongestComment = ushort.MaxValue;
    private const uint EndSign = 0x06054b50;

    private readonly ZipArchive _zip;
    private readonly Dictionary<string, ZipArchiveEntry> _photos = [];
    private ZipArchiveEntry? _visit;
    private long _unpacked;

    private BundleArchive(ZipArchive zip) => _zip = zip;

    /// <summary>The ids that the photos' names say.</summary>
    public IReadOnlyCollection<string> Photos => _photos.Keys;

    /// <param name="file">A stream that can seek; it stays open.</param>
    public static Outcome<BundleArchive> Open(Stream file)
    {
        if (file.Length > BundleLimits.MostBytes)
            return BundleFailures.Large(VisitLogTexts.Say("bundleArchive.fileHasMbLimitMb", file.Length >> 20, BundleLimits.MostBytes >> 20));
        BundleArchive? archive = null;
        Failure? failure = Guard(() =>
        {
            if (!HasBoundedDirectory(file))
                return BundleFailures.Wrong(VisitLogTexts.Get("bundleArchive.fileNotZipFileOr"));
            archive = new(new(file, ZipArchiveMode.Read, leaveOpen: true));
            return archive.Sort();
        });
        if (failure is null)
            return archive!;
        archive?.Dispose();
        return failure;
    }

    public Outcome<byte[]> ReadVisit() => Read(_visit!, BundleLimits.MostVisitBytes, VisitName);

    /// <summary>The bytes of a photo, whatever they are.</summary>
    public Outcome<byte[]> ReadPhoto(string id) => _photos.TryGetValue(id, out ZipArchiveEntry? entry)
        ? Read(entry, BundleLimits.MostPhotoBytes, VisitLogTexts.Get("bundleArchive.photo"))
        : new Failure(BundleFailures.PhotoWrong, VisitLogTexts.Word("bundleArchive.photoMissing", id[..12]), VisitLogTexts.Get("common.makeFileAgainWhereVisit"));

    /// <summary>Begins counting what is unpacked anew, for another pass.</summary>
    public void Rewind() => _unpacked = 0;

    public void Dispose() => _zip.Dispose();

    // All entries are held in memory once the archive is opened: their list is bounded before that.
    private static bool HasBoundedDirectory(Stream file)
    {
        if (file.Length < EndLength)
            return false;
        byte[] tail = new byte[(int)Math.Min(file.Length, EndLength + LongestComment)];
        file.Position = file.Length - tail.Length;
        file.ReadExactly(tail);
        file.Position = 0;
        for (int at = tail.Length - EndLength; at >= 0; at--)
        {
            ReadOnlySpan<byte> end = tail.AsSpan(at);
            if (BinaryPrimitives.ReadUInt32LittleEndian(end) != EndSign)
                continue;
            long count = BinaryPrimitives.ReadUInt16LittleEndian(end[10..]), size = BinaryPrimitives.ReadUInt32LittleEndian(end[12..]), from = BinaryPrimitives.ReadUInt32LittleEndian(end[16..]);
            return count <= BundleLimits.MostPhotos + 1 && size <= BundleLimits.MostDirectory && from + size == file.Length - tail.Length + at;
        }

        return false;
    }

    private Failure? Sort()
    {
        foreach (ZipArchiveEntry entry in _zip.Entries)
        {
            Match photo = PhotoName().Match(entry.FullName);
            bool added = photo.Success ? _photos.TryAdd(photo.Groups[1].Value, entry) : entry.FullName == VisitName && _visit is null;
            if (!added)
                return new Failure(BundleFailures.EntryUnknown, VisitLogTexts.Get("bundleArchive.fileHoldsSomethingThatDoes"), VisitLogTexts.Get("common.useFileAsCameFrom"));
            if (!photo.Success)
                _visit = entry;
        }

        return _visit is null ? BundleFailures.Wrong(VisitLogTexts.Say("bundleArchive.fileHoldsNo", VisitName)) : null;
    }

    private Outcome<byte[]> Read(ZipArchiveEntry entry, int most, string what)
    {
        byte[]? read = null;
        Failure? failure = Guard(() =>
        {
            long limit = Math.Min(Math.Min(most, BundleLimits.MostBytes - _unpacked), BundleLimits.GrowthFrom + (BundleLimits.MostGrowth * entry.CompressedLength));
            using Stream stream = entry.Open();
            using MemoryStream bytes = new();
            byte[] part = new byte[81920];
            for (int count; (count = stream.Read(part)) > 0;)
            {
                // What is unpacked is counted, not what the file says of it.
                if (bytes.Length + count > limit)
                    return BundleFailures.Large(VisitLogTexts.Say("bundleArchive.inFileLargerThanMay", what));
                bytes.Write(part, 0, count);
            }

            _unpacked += bytes.Length;
            read = bytes.ToArray();
            return null;
        });
        return failure is null ? read! : failure;
    }

    private static Failure? Guard(Func<Failure?> work)
    {
        try
        {
            return work();
        }
        catch (Exception fault) when (fault is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException)
        {
            return BundleFailures.Wrong(VisitLogTexts.Get("bundleArchive.fileDamagedOrCutOff"));
        }
    }

    [GeneratedRegex("^photos/([0-9a-f]{64})\\.(?:jpg|png|webp)\\z", RegexOptions.CultureInvariant)]
    private static partial Regex PhotoName();
}
