namespace MarkReader.Imaging.Photos;

/// <summary>Whether a picture's end mark is there. A decoder may fill up a cut picture with grey, which must not be measured.</summary>
internal static class PhotoEnd
{
    public static bool IsMissing(ReadOnlySpan<byte> bytes, PhotoFormat format) => format switch
    {
        PhotoFormat.Jpeg => bytes.LastIndexOf<byte>([0xFF, 0xD9]) < 0,
        PhotoFormat.Png => bytes.LastIndexOf("IEND"u8) < 0,
        _ => bytes.Length < 12 || BitConverter.ToUInt32(bytes[4..8]) + 8L > bytes.Length,
    };
}
