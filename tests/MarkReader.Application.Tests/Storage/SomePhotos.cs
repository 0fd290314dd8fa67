namespace MarkReader.Application.Tests.Storage;

/// <summary>Bytes with the signatures of photos; the storage looks no further than those.</summary>
internal static class SomePhotos
{
    public static byte[] Jpeg(int seed, int length = 5000)
    {
        byte[] bytes = new byte[length];
        new Random(seed).NextBytes(bytes);
        ((byte[])[0xFF, 0xD8, 0xFF]).CopyTo(bytes, 0);
        return bytes;
    }
}
