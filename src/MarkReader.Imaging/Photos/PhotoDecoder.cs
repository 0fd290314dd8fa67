using System.Runtime.InteropServices;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;
using OpenCvSharp;

namespace MarkReader.Imaging.Photos;

/// <summary>Second stage: bytes to pixels, turned by the EXIF orientation.</summary>
public static class PhotoDecoder
{
    /// <summary>Decodes in colour, for drawing on.</summary>
    public static Outcome<ColourPhoto> DecodeColour(ReadOnlyMemory<byte> bytes)
    {
        if (!PhotoHeaderReader.Read(bytes).TryGet(out PhotoHeader? header, out Failure? failure))
            return failure;
        using Mat? bgr = Decode(bytes, header, grey: false);
        if (bgr is null)
            return Undecodable(bytes.Span, header.Format);
        using Mat rgba = bgr.CvtColor(ColorConversionCodes.BGR2RGBA);
        byte[] pixels = new byte[rgba.Width * rgba.Height * 4];
        Marshal.Copy(rgba.Data, pixels, 0, pixels.Length);
        return new ColourPhoto(new(rgba.Width, rgba.Height), pixels);
    }

    internal static Outcome<GreyPhoto> DecodeGrey(ReadOnlyMemory<byte> bytes, PhotoHeader header)
    {
        if (PhotoEnd.IsMissing(bytes.Span, header.Format))
            return Undecodable(bytes.Span, header.Format);
        Mat? grey = Decode(bytes, header, grey: true);
        return grey is null ? Undecodable(bytes.Span, header.Format) : new GreyPhoto(grey, header);
    }

    private static Mat? Decode(ReadOnlyMemory<byte> bytes, PhotoHeader header, bool grey)
    {
        if (header.HasAlpha)
        {
            using Mat? stored = Decode(bytes, ImreadModes.Unchanged);
            if (stored is null)
                return null;
            if (stored.Channels() == 4 && Transparency.OnWhite(stored, grey, header.Exif.Orientation) is { } shown)
                return shown;
        }

        return Decode(bytes, grey ? ImreadModes.Grayscale : ImreadModes.Color);
    }

    private static Mat? Decode(ReadOnlyMemory<byte> bytes, ImreadModes mode)
    {
        try
        {
            Mat mat = Cv2.ImDecode(bytes.Span, mode);
            if (!mat.Empty())
                return mat;
            mat.Dispose();
        }
        catch (OpenCVException)
        {
            // Told as an undecodable photo below.
        }

        return null;
    }

    private static Failure Undecodable(ReadOnlySpan<byte> bytes, PhotoFormat format) => PhotoEnd.IsMissing(bytes, format)
        ? new(PhotoFailures.Truncated, ImagingTexts.Get("common.pictureBreaksOffBeforeEnd"), ImagingTexts.Get("common.sendWholeFileAgain"))
        : new(PhotoFailures.Damaged, ImagingTexts.Get("photoDecoder.pictureDamagedAndCannotBe"), ImagingTexts.Get("common.takeOrSendPhotoAgain"));
}
