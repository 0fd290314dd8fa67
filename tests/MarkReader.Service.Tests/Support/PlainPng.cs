using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace MarkReader.Service.Tests.Support;

/// <summary>A grey picture with nothing in it, written by hand (PNG, RFC 2083).</summary>
internal static class PlainPng
{
    public static byte[] Grey(int width, int height)
    {
        byte[] header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = 8;
        byte[] rows = new byte[(width + 1) * height];
        Array.Fill(rows, (byte)150);
        for (int y = 0; y < height; y++)
            rows[y * (width + 1)] = 0;
        using MemoryStream packed = new();
        using (ZLibStream zip = new(packed, CompressionLevel.Fastest, leaveOpen: true))
            zip.Write(rows);
        return [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, .. Chunk("IHDR", header), .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];
    }

    private static byte[] Chunk(string type, byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data];
        byte[] length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        byte[] check = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(check, Crc(body));
        return [.. length, .. body, .. check];
    }

    private static uint Crc(byte[] bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte each in bytes)
        {
            crc ^= each;
            for (int bit = 0; bit < 8; bit++)
                crc = (crc & 1) == 1 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
        }
        return ~crc;
    }
}
