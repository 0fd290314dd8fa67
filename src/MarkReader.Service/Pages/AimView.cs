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
    private const double NormalQuantile95 = 1.959964;

    private AimView(KeptAim kept) => Kept = kept;

    public KeptAim Kept { get; }

    public long Id => Kept.Id;

    public AimReport? Report { get; private init; }

    public Failure? Refusal { get; private init; }

    public AimPicture? Picture { get; private init; }

    public string FoundAt => Kept.FoundAt.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);

    public string Paths => $"{Words.Short(Kept.Aim.Inputs.Leg.NearPath)} mm and {Words.Short(Kept.Aim.Inputs.Leg.FarPath)} mm";

    /// <summary>How the beam has to move from the far mark, in words; empty when it is there within 0.05 mm.</summary>
    public string Move => Words.Move(Report!.Aim.U - Report.Far.U, Report.Aim.V - Report.Far.V);

    public double Distance => Math.Sqrt(Math.Pow(Report!.Aim.U - Report.Far.U, 2) + Math.Pow(Report.Aim.V - Report.Far.V, 2));

    /// <summary>Half width of the interval that holds the aim's u with 95 % (k = 1.96), mm.</summary>
    public double AimU95 => NormalQuantile95 * Math.Sqrt(Report!.Aim.Covariance[0][0]);

    /// <summary>The same for v.</summary>
    public double AimV95 => NormalQuantile95 * Math.Sqrt(Report!.Aim.Covariance[1][1]);

    /// <summary>The region that holds the aim point with 95 %.</summary>
    public Ellipse Region => new Covariance2(Report!.Aim.Covariance[0][0], Report.Aim.Covariance[0][1], Report.Aim.Covariance[1][1]).Ellipse95();

    /// <summary>Where the uncertainty of the aim point comes from; null in results of earlier versions.</summary>
    public BudgetView? AimBudget => BudgetView.From("Aim point", Report!.Aim.Budget);

    /// <summary>The same for both marks.</summary>
    public IReadOnlyList<BudgetView> MarkBudgets => [.. new[] { BudgetView.From("Near mark", Report!.Near.Budget), BudgetView.From("Far mark", Report.Far.Budget) }.OfType<BudgetView>()];

    /// <summary>Plain facts of each photo.</summary>
    public IReadOnlyList<(string Photo, string Facts)> Photos => Report!.Quality switch
    {
        null => [],
        { Near: { } near } both => [("Near photo", Words.Facts(near)), ("Far photo", Words.Facts(both.Far))],
        var one => [("Photo", Words.Facts(one.Far))],
    };

    /// <summary>What was entered of the print and the tape; empty when nothing was.</summary>
    public string Readings => Kept.Aim.Inputs.Card switch
    {
        null => "",
        { RulerU: { } u, RulerV: { } v, TapeHeight: { } height } => $"Rulers {Words.Short(u)} mm and {Words.Short(v)} mm; tape {Words.Short(height)} mm above the card.",
        { RulerU: { } u, RulerV: { } v } => $"Rulers {Words.Short(u)} mm and {Words.Short(v)} mm.",
        { TapeHeight: { } height } => $"Tape {Words.Short(height)} mm above the card.",
        _ => "",
    };

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
