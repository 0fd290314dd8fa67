using System.Buffers.Binary;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using MetadataExtractor.Formats.Jpeg;
using MetadataExtractor.Formats.WebP;
using MetadataExtractor.IO;

namespace MarkReader.Imaging.Photos;

/// <summary>First stage: is it a photo, and is it of a size that will be decoded?</summary>
public static class PhotoHeaderReader
{
    private static string SendJpeg => ImagingTexts.Get("photoHeaderReader.sendPhotoAsJpegPng");

    /// <summary>Checks signature, size in bytes and size in pixels without decoding.</summary>
    public static Outcome<PhotoHeader> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.IsEmpty)
            return new Failure(PhotoFailures.Empty, ImagingTexts.Get("photoHeaderReader.fileHasBytes"), ImagingTexts.Get("common.takeOrSendPhotoAgain"));
        if (bytes.Length > PhotoLimits.MaxBytes)
            return new Failure(PhotoFailures.TooLarge, ImagingTexts.Word("photoHeaderReader.fileHasMbLimitMb", bytes.Length / 1048576, PhotoLimits.MaxBytes / 1048576), ImagingTexts.Get("photoHeaderReader.sendSmallerJpeg"));
        if (Sniff(bytes.Span) is not { } format)
        {
            return IsHeif(bytes.Span)
                ? new Failure(PhotoFailures.Format, ImagingTexts.Get("photoHeaderReader.fileHeicOrAvifWhich"), ImagingTexts.Get("photoHeaderReader.setPhoneCameraJpegOften"))
                : new Failure(PhotoFailures.Format, ImagingTexts.Get("photoHeaderReader.fileNotJpegPngOr"), SendJpeg);
        }

        PhotoHeader header;
        try
        {
            header = ReadSize(format, bytes);
        }
        catch (Exception e) when (e is ImageProcessingException or MetadataException or IOException or IndexOutOfRangeException or ArgumentException or OverflowException)
        {
            return PhotoEnd.IsMissing(bytes.Span, format)
                ? new Failure(PhotoFailures.Truncated, ImagingTexts.Get("common.pictureBreaksOffBeforeEnd"), ImagingTexts.Get("common.sendWholeFileAgain"))
                : new Failure(PhotoFailures.Damaged, ImagingTexts.Get("photoHeaderReader.pictureHeaderCannotBeRead"), ImagingTexts.Get("common.takeOrSendPhotoAgain"));
        }

        return Check(header);
    }

    private static Outcome<PhotoHeader> Check(PhotoHeader header)
    {
        (int width, int height) = (header.StoredWidth, header.StoredHeight);
        if (width <= 0 || height <= 0)
            return new Failure(PhotoFailures.Damaged, ImagingTexts.Get("photoHeaderReader.headerGivesNoWidthOr"), ImagingTexts.Get("common.takeOrSendPhotoAgain"));
        if (width > PhotoLimits.MaxSide || height > PhotoLimits.MaxSide || (long)width * height > PhotoLimits.MaxPixels)
            return new Failure(PhotoFailures.TooLarge, ImagingTexts.Word("photoHeaderReader.photoXPxLimitMillion", width, height, PhotoLimits.MaxPixels / 1_000_000, PhotoLimits.MaxSide), ImagingTexts.Get("photoHeaderReader.takeAtLowerResolutionOr"));
        if (header.HasAlpha && (long)width * height > PhotoLimits.MaxPixelsWithAlpha)
            return new Failure(PhotoFailures.TooLarge, ImagingTexts.Word("photoHeaderReader.photoXPxWithTransparency", width, height, PhotoLimits.MaxPixelsWithAlpha / 1_000_000), ImagingTexts.Get("photoHeaderReader.saveWithoutTransparencyOrMake"));
        if (Math.Min(width, height) < PhotoLimits.MinSide)
            return new Failure(PhotoFailures.TooSmall, ImagingTexts.Word("photoHeaderReader.photoOnlyXPx", width, height), ImagingTexts.Word("photoHeaderReader.sendOriginalPhotoAtLeast", PhotoLimits.MinSide));
        return header;
    }

    private static PhotoFormat? Sniff(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith<byte>([0xFF, 0xD8, 0xFF]))
            return PhotoFormat.Jpeg;
        if (bytes.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]))
            return PhotoFormat.Png;
        return bytes.Length >= 12 && bytes[..4].SequenceEqual("RIFF"u8) && bytes[8..12].SequenceEqual("WEBP"u8) ? PhotoFormat.WebP : null;
    }

    private static bool IsHeif(ReadOnlySpan<byte> bytes) => bytes.Length >= 12 && bytes[4..8].SequenceEqual("ftyp"u8);

    private static PhotoHeader ReadSize(PhotoFormat format, ReadOnlyMemory<byte> bytes)
    {
        if (format == PhotoFormat.Png)
            return ReadPng(bytes.Span);
        using MemoryStream stream = new(bytes.ToArray(), writable: false);
        return format == PhotoFormat.Jpeg ? ReadJpeg(stream) : ReadWebP(stream, bytes.Span);
    }

    private static PhotoHeader ReadJpeg(Stream stream)
    {
        // Only the frame header and EXIF: other segments may hold anything.
        var directories = JpegMetadataReader.ReadMetadata(stream, [new JpegReader(), new ExifReader()]);
        JpegDirectory jpeg = directories.OfType<JpegDirectory>().FirstOrDefault() ?? throw new ImageProcessingException("No frame header.");
        return new(PhotoFormat.Jpeg, jpeg.GetImageWidth(), jpeg.GetImageHeight(), PhotoExif.Of(directories));
    }

    /// <summary>IHDR comes first, its size fixed (ISO/IEC 15948, 11.2.2). Of the later chunks none that could be made to inflate without bound is read.</summary>
    private static PhotoHeader ReadPng(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 33 || !bytes[12..16].SequenceEqual("IHDR"u8))
            throw new ImageProcessingException("No IHDR.");
        // Colour types 4 and 6 have alpha; the others may have it through tRNS.
        bool alpha = bytes[25] is 4 or 6 || PngChunks.Find(bytes, "tRNS"u8).Length > 0;
        ReadOnlySpan<byte> exif = PngChunks.Find(bytes, "eXIf"u8);
        PhotoExif read = exif.Length > 0 ? PhotoExif.Of(new ExifReader().Extract(new ByteArrayReader(exif.ToArray()))) : PhotoExif.None;
        return new(PhotoFormat.Png, BinaryPrimitives.ReadInt32BigEndian(bytes[16..20]), BinaryPrimitives.ReadInt32BigEndian(bytes[20..24]), read) { HasAlpha = alpha };
    }

    private static PhotoHeader ReadWebP(Stream stream, ReadOnlySpan<byte> bytes)
    {
        var directories = WebPMetadataReader.ReadMetadata(stream);
        WebPDirectory webp = directories.OfType<WebPDirectory>().FirstOrDefault() ?? throw new ImageProcessingException("No picture chunk.");
        return new(PhotoFormat.WebP, webp.GetInt32(WebPDirectory.TagImageWidth), webp.GetInt32(WebPDirectory.TagImageHeight), PhotoExif.Of(directories)) { HasAlpha = WebPHasAlpha(bytes) };
    }

    /// <summary>A flag of the first chunk: VP8X (RFC 9649, 2.7) or VP8L (3.4); VP8 alone has no alpha.</summary>
    private static bool WebPHasAlpha(ReadOnlySpan<byte> bytes) => bytes.Length > 24
        && ((bytes[12..16].SequenceEqual("VP8X"u8) && (bytes[20] & 0x10) != 0) || (bytes[12..16].SequenceEqual("VP8L"u8) && (bytes[24] & 0x10) != 0));
}
