using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Pictures;

/// <summary>A picture's SVG, read as other programs read it.</summary>
internal sealed partial class DrawnPicture
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    private DrawnPicture(XElement root) => Root = root;

    public XElement Root { get; }

    public IReadOnlyList<string> Words => [.. Root.Descendants(s_svg + "text").Select(t => t.Value)];

    public static DrawnPicture Of(IPicture picture) => new(XElement.Parse(Encoding.UTF8.GetString(PictureFile.Svg(picture))));

    public double LeastLetters => Root.Descendants(s_svg + "text").Min(t => Number(t.Attribute("font-size")!.Value));

    /// <summary>The points of every outline of straight pieces with this colour.</summary>
    /// <param name="filled">Whether areas are meant, not lines.</param>
    public IReadOnlyList<IReadOnlyList<PixelPoint>> Outlines(string colour, bool filled = false) =>
    [
        .. Root.Descendants(s_svg + "path")
            .Where(p => string.Equals(p.Attribute(filled ? "fill" : "stroke")?.Value, colour, StringComparison.OrdinalIgnoreCase) && !Curves().IsMatch(p.Attribute("d")!.Value))
            .Select(p => (IReadOnlyList<PixelPoint>)[.. Pairs().Matches(p.Attribute("d")!.Value).Select(m => new PixelPoint(Number(m.Groups[1].Value), Number(m.Groups[2].Value)))]),
    ];

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(-?[\d.]+(?:e-?\d+)?)[ ,](-?[\d.]+(?:e-?\d+)?)", RegexOptions.CultureInvariant)]
    private static partial Regex Pairs();

    [GeneratedRegex("[CQA]", RegexOptions.CultureInvariant)]
    private static partial Regex Curves();
}
