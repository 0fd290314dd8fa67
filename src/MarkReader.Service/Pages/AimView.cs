using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Api.Answers;

namespace MarkReader.Service.Pages;

/// <summary>A result as the pages show it.</summary>
public sealed class AimView
{
    private AimView(KeptAim kept) => Kept = kept;

    public KeptAim Kept { get; }

    public long Id => Kept.Id;

    public AimReport? Report { get; private init; }

    public Failure? Refusal { get; private init; }

    public AimPicture? Picture { get; private init; }

    public double Distance => Math.Sqrt(Math.Pow(Report!.Aim.U - Report.Far.U, 2) + Math.Pow(Report.Aim.V - Report.Far.V, 2));

    /// <summary>Half width of the interval that holds the aim's u with 95 % (k = 1.96), mm.</summary>
    public double AimU95 => Normal95.Factor * Math.Sqrt(Report!.Aim.Covariance[0][0]);

    /// <summary>The same for v.</summary>
    public double AimV95 => Normal95.Factor * Math.Sqrt(Report!.Aim.Covariance[1][1]);

    /// <summary>The region that holds the aim point with 95 %.</summary>
    public Ellipse Region => new Covariance2(Report!.Aim.Covariance[0][0], Report.Aim.Covariance[0][1], Report.Aim.Covariance[1][1]).Ellipse95();

    /// <summary>Decimals that show the uncertainty with two digits, 1 to 3.</summary>
    public int Decimals => Math.Max(AimU95, AimV95) switch
    {
        < 0.1 => 3,
        < 1 => 2,
        _ => 1,
    };

    public static AimView From(KeptAim kept) => new(kept)
    {
        Report = KeptReports.Read<AimReport>(kept.Aim.Answer),
        Refusal = (kept.Aim.Answer as KeptAnswer.Refusal)?.Failure,
        Picture = kept.Aim.Overlay is { } overlay ? AimPicture.From(overlay, kept.Aim.Inputs.FarPhoto) : null,
    };
}

/// <summary>The far photo with its overlays.</summary>
/// <param name="Photo">Address of the photo.</param>
/// <param name="Whole">The drawing for the whole photo, and its view box.</param>
/// <param name="Crop">The drawing for the card alone, and its view box.</param>
public sealed partial record AimPicture(string Photo, OverlayLayer Whole, OverlayLayer Crop)
{
    internal static AimPicture From(KeptOverlay overlay, string photo) =>
        new($"/api/photos/{photo}/original", Layer(overlay.Photo), Layer(overlay.Crop));

    private static OverlayLayer Layer(string svg)
    {
        double[] box = [.. ViewBox().Match(svg).Groups[1].Value.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
        return new(svg[(svg.IndexOf('>', StringComparison.Ordinal) + 1)..svg.LastIndexOf("</svg>", StringComparison.Ordinal)], box[0], box[1], box[2], box[3]);
    }

    [GeneratedRegex("viewBox=\"([^\"]+)\"", RegexOptions.CultureInvariant)]
    private static partial Regex ViewBox();
}

/// <summary>What lies inside an overlay's svg element, and its view box in px.</summary>
public sealed record OverlayLayer(string Inside, double Left, double Top, double Width, double Height)
{
    public string ViewBox => string.Create(CultureInfo.InvariantCulture, $"{Left} {Top} {Width} {Height}");
}
