using MarkReader.Drawing.Overlays;

namespace MarkReader.Drawing.Tests.Overlays;

public sealed class OverlayColoursTests
{
    private static readonly Colour[] s_colours = [OverlayColours.Near, OverlayColours.Far, OverlayColours.Aim, OverlayColours.Plain];

    /// <summary>
    /// Complete protanopia, deuteranopia and tritanopia on linear sRGB: G. M. Machado, M. M. Oliveira and L. A. F. Fernandes,
    /// IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291–1298, doi:10.1109/TVCG.2009.113, table for severity 1.0; the first row is common vision.
    /// </summary>
    public static TheoryData<string, double[]> Visions { get; } = new()
    {
        { "common", [1, 0, 0, 0, 1, 0, 0, 0, 1] },
        { "protanopia", [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998] },
        { "deuteranopia", [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881] },
        { "tritanopia", [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900] },
    };

    [Fact]
    public void Every_colour_stands_out_from_its_casing_and_one_of_the_two_from_any_grey()
    {
        Assert.All(s_colours, c => Assert.True(c.Contrast(OverlayColours.Dark) >= 4.5, $"{c.Hex}: {c.Contrast(OverlayColours.Dark):0.0}"));
        for (int level = 0; level < 256; level++)
        {
            Colour grey = new((byte)level, (byte)level, (byte)level);
            Assert.All(s_colours, c => Assert.True(Math.Max(c.Contrast(grey), OverlayColours.Dark.Contrast(grey)) >= 2, $"{c.Hex} on grey {level}"));
        }
    }

    [Theory]
    [MemberData(nameof(Visions))]
    public void Near_far_and_aim_differ_plainly_in_every_vision(string vision, double[] matrix)
    {
        (double L, double A, double B)[] seen = [.. s_colours.Select(c => Lab(c, matrix))];
        for (int i = 0; i < seen.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double difference = Math.Sqrt(Math.Pow(seen[i].L - seen[j].L, 2) + Math.Pow(seen[i].A - seen[j].A, 2) + Math.Pow(seen[i].B - seen[j].B, 2));
                Assert.True(difference > 20, $"{s_colours[i].Hex} and {s_colours[j].Hex} in {vision}: {difference:0}");
            }
        }
    }

    [Fact]
    public void Black_and_white_have_the_largest_contrast() => Assert.Equal(21, new Colour(0, 0, 0).Contrast(new(255, 255, 255)), 1e-9);

    /// <summary>CIE 1976 L*a*b* (CIE 15:2004) of a colour after a matrix on linear sRGB, white point D65.</summary>
    private static (double L, double A, double B) Lab(Colour colour, double[] m)
    {
        double[] rgb = [Linear(colour.R), Linear(colour.G), Linear(colour.B)];
        double[] seen = [.. Enumerable.Range(0, 3).Select(i => Math.Clamp((m[3 * i] * rgb[0]) + (m[(3 * i) + 1] * rgb[1]) + (m[(3 * i) + 2] * rgb[2]), 0, 1))];
        double x = ((0.4124 * seen[0]) + (0.3576 * seen[1]) + (0.1805 * seen[2])) / 0.9505;
        double y = (0.2126 * seen[0]) + (0.7152 * seen[1]) + (0.0722 * seen[2]);
        double z = ((0.0193 * seen[0]) + (0.1192 * seen[1]) + (0.9505 * seen[2])) / 1.0891;
        return ((116 * F(y)) - 16, 500 * (F(x) - F(y)), 200 * (F(y) - F(z)));
    }

    private static double Linear(byte value) => value / 255.0 <= 0.04045 ? value / 255.0 / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);

    private static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;
}
