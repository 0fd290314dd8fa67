using MarkReader.Application.Reports;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages;

/// <summary>What the pages say of a result beyond its numbers, in the reader's language and unit.</summary>
internal sealed class MeasureWords(IStringLocalizer<MeasureTexts> texts, Figures figures)
{
    /// <summary>How the beam has to move from the far mark; empty when it is there within 0.05 mm.</summary>
    public string Move(AimView aim) => Move(aim.Report!.Aim.U - aim.Report.Far.U, aim.Report.Aim.V - aim.Report.Far.V);

    /// <summary>How the beam has to move on the tape: right and left along u, up and down along v, mm.</summary>
    public string Move(double u, double v)
    {
        string along = Part(u, "move.right", "move.left");
        string across = Part(v, "move.up", "move.down");
        return (along.Length, across.Length) switch
        {
            (0, 0) => "",
            (0, _) => across,
            (_, 0) => along,
            _ => texts["move.both", along, across],
        };
    }

    /// <summary>The path lengths of the near and the far station.</summary>
    public string Paths(AimView aim) => texts["paths", figures.Short(aim.Kept.Aim.Inputs.Leg.NearPath, 2), figures.Short(aim.Kept.Aim.Inputs.Leg.FarPath, 2)];

    /// <summary>Where the uncertainty of the aim point comes from; null in results of earlier versions.</summary>
    public BudgetView? AimBudget(AimView aim) => Budget("aim", aim.Report!.Aim.Budget);

    /// <summary>The same for both marks.</summary>
    public IReadOnlyList<BudgetView> MarkBudgets(AimView aim) =>
        [.. new[] { Budget("budget.near", aim.Report!.Near.Budget), Budget("budget.far", aim.Report.Far.Budget) }.OfType<BudgetView>()];

    /// <summary>Plain facts of each photo.</summary>
    public IReadOnlyList<(string Photo, string Facts)> Photos(AimView aim) => aim.Report!.Quality switch
    {
        null => [],
        { Near: { } near } both => [(texts["photo.near"], Facts(near)), (texts["photo.far"], Facts(both.Far))],
        var one => [(texts["photo.one"], Facts(one.Far))],
    };

    /// <summary>What was entered of the print and the tape; empty when nothing was.</summary>
    public string Readings(AimView aim) => aim.Kept.Aim.Inputs.Card switch
    {
        null => "",
        { RulerU: { } u, RulerV: { } v, TapeHeight: { } height } => texts["readings.both", figures.Short(u, 2), figures.Short(v, 2), figures.Short(height, 2)],
        { RulerU: { } u, RulerV: { } v } => texts["readings.rulers", figures.Short(u, 2), figures.Short(v, 2)],
        { TapeHeight: { } height } => texts["readings.tape", figures.Short(height, 2)],
        _ => "",
    };

    /// <summary>The camera profiles that the photos were measured with; empty when with none.</summary>
    public string Cameras(AimView aim) => aim.Report!.Cameras switch
    {
        null => "",
        { Near: null } one when aim.Kept.Aim.Inputs.IsOnePhoto => texts["camera.one", one.Far!],
        { } same when same.Near == same.Far => texts["camera.one", same.Far!],
        { } two => texts["camera.two", two.Near ?? texts["camera.none"].Value, two.Far ?? texts["camera.none"].Value],
    };

    private string Facts(QualityReport quality)
    {
        string facts = texts[
            "facts",
            figures.Number(quality.PixelsPerMm, 0),
            figures.Number(quality.TiltDegrees, 0),
            figures.Number(quality.BlurPx, 1),
            figures.Number(100 * quality.PaperLight, 0),
            figures.Number(100 * quality.Noise, 1),
            quality.MarkersSeen,
            quality.MarkersTotal];
        string glare = quality.GlareShare > 0.005 ? texts["facts.glare", figures.Number(100 * quality.GlareShare, 0)] : "";
        string clipped = quality.ClippedShare > 0.005 ? texts["facts.clipped", figures.Number(100 * quality.ClippedShare, 0)] : "";
        return facts + glare + clipped;
    }

    private BudgetView? Budget(string title, IReadOnlyList<ComponentReport>? budget) => BudgetView.From(texts[title], texts["budget.other"], budget);

    private string Part(double value, string above, string below)
    {
        double size = Math.Abs(value);
        return Words.Number(size, 1) == "0.0" ? "" : texts[value > 0 ? above : below, figures.Length(size, 1)];
    }
}
