using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace MarkReader.Drawing.Tests.Support;

/// <summary>Reads a PDF with poppler-utils: a renderer that shares no code with the one that wrote it.</summary>
internal static class Poppler
{
    /// <summary>The resolution of a fine rendering: 1270 dpi, 0.02 mm to the pixel.</summary>
    public const int PixelsPerMm = 50;

    /// <summary>A part of the first page as a grey picture.</summary>
    public static GreyPicture Render(byte[] pdf, (double Left, double Top, double Width, double Height) mm, int pixelsPerMm = PixelsPerMm) =>
        Pgm(Run("pdftoppm", pdf, string.Create(CultureInfo.InvariantCulture,
            $"-gray -r {pixelsPerMm * 25.4} -x {mm.Left * pixelsPerMm:0} -y {mm.Top * pixelsPerMm:0} -W {mm.Width * pixelsPerMm:0} -H {mm.Height * pixelsPerMm:0} -")));

    public static string Text(byte[] pdf) => Encoding.UTF8.GetString(Run("pdftotext", pdf, "- -"));

    public static string Info(byte[] pdf) => Encoding.UTF8.GetString(Run("pdfinfo", pdf, "-"));

    /// <summary>Every word with its box (XHTML), pt from the page's upper left corner.</summary>
    public static string Boxes(byte[] pdf) => Encoding.UTF8.GetString(Run("pdftotext", pdf, "-bbox - -"));

    private static byte[] Run(string program, byte[] pdf, string arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        using MemoryStream output = new();
        Task reading = process.StandardOutput.BaseStream.CopyToAsync(output);
        process.StandardInput.BaseStream.Write(pdf);
        process.StandardInput.Close();
        reading.Wait();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} {arguments} ended with {process.ExitCode}");
        return output.ToArray();
    }

    private static GreyPicture Pgm(byte[] bytes)
    {
        string head = Encoding.ASCII.GetString(bytes, 0, 40);
        string[] words = head.Split((char[])['\n', ' '], 5);
        Assert.Equal("P5", words[0]);
        (int width, int height) = (int.Parse(words[1], CultureInfo.InvariantCulture), int.Parse(words[2], CultureInfo.InvariantCulture));
        return new(width, height, bytes[^(width * height)..]);
    }
}
