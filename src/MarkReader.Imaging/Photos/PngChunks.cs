using System.Buffers.Binary;

namespace MarkReader.Imaging.Photos;

/// <summary>A PNG's chunks, walked by their lengths without inflating any (ISO/IEC 15948, 5.3).</summary>
internal static class PngChunks
{
    private const int Signature = 8, Frame = 12;

    /// <summary>The data of the first chunk with this name of four letters; empty when there is none.</summary>
    public static ReadOnlySpan<byte> Find(ReadOnlySpan<byte> png, ReadOnlySpan<byte> name)
    {
        for (ReadOnlySpan<byte> rest = png[Math.Min(Signature, png.Length)..]; rest.Length >= Frame;)
        {
            uint length = BinaryPrimitives.ReadUInt32BigEndian(rest);
            if (length > rest.Length - Frame)
                return [];
            if (rest[4..8].SequenceEqual(name))
                return rest[8..(8 + (int)length)];
            rest = rest[(Frame + (int)length)..];
        }

        return [];
    }
}
