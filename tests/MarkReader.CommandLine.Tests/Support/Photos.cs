using System.Text;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.CommandLine.Tests.Support;

/// <summary>A folder of photos of one leg, rendered once for all tests of a run: near, far, both, and files that are no photos.</summary>
public sealed class Photos : IDisposable
{
    // A beam that meets the tape at (1.5, -2) + L·(-9, 12) mrad.
    public const double AimU = 1.5, AimV = -2, SlopeU = -9, SlopeV = 12, NearPath = 80, FarPath = 480;

    private readonly string _folder = Directory.CreateTempSubdirectory("photos-").FullName;

    public Photos()
    {
        (double U, double V) near = At(NearPath), far = At(FarPath);
        Write("near.jpg", Render(21, near));
        Write("both.jpg", Render(22, near, far));
        Write("near.truth.json", Truth(near));
        Write("both.truth.json", Truth(near, far));
        Write("blank.png", Render(23, PhotoFormat.Png));
        Write("empty.jpg", []);
        Write("words.jpg", "This is no photo."u8);
        byte[] whole = File.ReadAllBytes(this["near.jpg"]);
        Write("cut.jpg", whole.AsSpan(0, whole.Length / 2));
        Write("huge.png", HugePng());
    }

    public string Folder => _folder;

    public string this[string name] => Path.Combine(_folder, name);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static (double U, double V) At(double path) => (AimU + (SlopeU * path / 1000), AimV + (SlopeV * path / 1000));

    private static byte[] Render(int seed, params (double U, double V)[] marks) => Render(seed, PhotoFormat.Jpeg, marks);

    private static byte[] Render(int seed, PhotoFormat format, params (double U, double V)[] marks) => Scene.Render(new("leg", seed)
    {
        Camera = new(900, 900, 1000),
        Pose = new(15, 3 + (seed % 5), 30 * seed, (seed % 3) - 1),
        Burns = [.. marks.Select(m => new BurnSpec(m.U, m.V, 0.9, 0.12, 2.6, 1.4, 0.4))],
        Output = new(format),
    }).Photo;

    private static byte[] Truth(params (double U, double V)[] marks) => Encoding.UTF8.GetBytes(
        FormattableString.Invariant($"{{\"marks\": [{string.Join(", ", marks.Select(m => FormattableString.Invariant($"{{\"u\": {m.U}, \"v\": {m.V}}}")))}]}}"));

    /// <summary>The signature and header of a PNG of 30 000 × 30 000 px, and its end.</summary>
    private static byte[] HugePng()
    {
        byte[] size = [0x00, 0x00, 0x75, 0x30];
        byte[] header = [.. "IHDR"u8, .. size, .. size, 8, 2, 0, 0, 0];
        return
        [
            0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13, .. header, .. Crc(header),
            0, 0, 0, 0, .. "IEND"u8, 0xAE, 0x42, 0x60, 0x82,
        ];
    }

    /// <summary>The CRC of PNG (ISO/IEC 15948, annex D).</summary>
    private static byte[] Crc(byte[] bytes)
    {
        uint crc = 0xFFFFFFFF;
        foreach (byte b in bytes)
        {
            crc ^= b;
            for (int bit = 0; bit < 8; bit++)
                crc = (crc & 1) == 1 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
        }

        crc = ~crc;
        return [(byte)(crc >> 24), (byte)(crc >> 16), (byte)(crc >> 8), (byte)crc];
    }

    private void Write(string name, ReadOnlySpan<byte> bytes) => File.WriteAllBytes(this[name], bytes);
}

/// <summary>Tests that share the rendered photos.</summary>
[CollectionDefinition(nameof(PhotoTests))]
public sealed class PhotoTests : ICollectionFixture<Photos>;
