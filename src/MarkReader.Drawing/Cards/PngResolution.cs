using System.Buffers.Binary;

namespace MarkReader.Drawing.Cards;

/// <summary>Stores a resolution in a PNG (chunk pHYs; W3C, Portable Network Graphics, third edition, 11.3.4.3).</summary>
internal static class PngResolution
{
    private const int HeaderEnd = 8 + 25; // signature and IHDR

    /// <summary>The same PNG with <paramref name="pixelsPerMetre"/> both ways.</summary>
    public static byte[] Add(byte[] png, int pixelsPerMetre)
    {
        byte[] chunk = new byte[12 + 9];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk.AsSpan(4));
        BinaryPrimitives.WriteInt32BigEndian(chunk.AsSpan(8), pixelsPerMetre);
        BinaryPrimitives.WriteInt32BigEndian(chunk.AsSpan(12), pixelsPerMetre);
        chunk[16] = 1; // the unit is the metre
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(17), Crc(chunk.AsSpan(4, 13)));
        return [.. png.AsSpan(0, HeaderEnd), .. chunk, .. png.AsSpan(HeaderEnd)];
    }

    /// <summary>CRC-32 as in PNG, annex D.</summary>
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte b in bytes)
        {
            crc ^= b;
            for (int bit = 0; bit < 8; bit++)
                crc = (crc >> 1) ^ (0xEDB88320 & (uint)-(int)(crc & 1));
        }

        return ~crc;
    }
}
