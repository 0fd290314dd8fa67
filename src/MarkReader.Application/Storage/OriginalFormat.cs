namespace MarkReader.Application.Storage;

/// <summary>A format in which original photos are kept.</summary>
/// <param name="Name">Name in the database.</param>
/// <param name="Extension">Ending of the file, with its dot.</param>
/// <param name="MediaType">Media type under which it is given out again.</param>
public sealed record OriginalFormat(string Name, string Extension, string MediaType)
{
    public static readonly OriginalFormat Jpeg = new("jpeg", ".jpg", "image/jpeg");

    public static readonly OriginalFormat Png = new("png", ".png", "image/png");

    public static readonly OriginalFormat WebP = new("webp", ".webp", "image/webp");

    /// <summary>The format that the first bytes tell (their signatures; a name's ending tells nothing), or null.</summary>
    public static OriginalFormat? Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith<byte>([0xFF, 0xD8, 0xFF]))
            return Jpeg;
        if (bytes.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]))
            return Png;
        return bytes.Length >= 12 && bytes.StartsWith("RIFF"u8) && bytes[8..12].SequenceEqual("WEBP"u8) ? WebP : null;
    }

    internal static OriginalFormat Named(string name) => name switch
    {
        "jpeg" => Jpeg,
        "png" => Png,
        "webp" => WebP,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Not a format in which photos are kept."),
    };
}
