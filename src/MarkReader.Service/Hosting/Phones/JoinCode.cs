using System.Globalization;
using System.Text;
using QRCoder;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>The square code (QR, ISO/IEC 18004) of a link, as SVG without styles, its quiet zone of four modules in it.</summary>
internal static class JoinCode
{
    public static string Svg(string link)
    {
        using QRCodeData code = QRCodeGenerator.GenerateQrCode(link, QRCodeGenerator.ECCLevel.M);
        int size = code.ModuleMatrix.Count;
        StringBuilder runs = new();
        for (int y = 0; y < size; y++)
        {
            for (int x = 0; x < size;)
            {
                int start = x;
                while (x < size && code.ModuleMatrix[y][x])
                    x++;
                if (x > start)
                    runs.Append(CultureInfo.InvariantCulture, $"M{start} {y}h{x - start}v1H{start}z");
                else
                    x++;
            }
        }
        return string.Create(
            CultureInfo.InvariantCulture,
            $"<svg viewBox=\"0 0 {size} {size}\" shape-rendering=\"crispEdges\" aria-hidden=\"true\"><rect width=\"{size}\" height=\"{size}\" fill=\"#fff\"/><path d=\"{runs}\" fill=\"#000\"/></svg>");
    }
}
