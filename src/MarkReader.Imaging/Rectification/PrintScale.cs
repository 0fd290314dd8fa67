using MarkReader.Cards;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Measured over nominal length of the print along u and v, with the standard uncertainty of each.</summary>
internal sealed record PrintScale(double U, double V, double UncertaintyU, double UncertaintyV)
{
    /// <summary>A reading farther than this from the nominal length is a mistake, not a print.</summary>
    private const double MostDeviation = 0.1;

    public static PrintScale AsDrawn { get; } = new(1, 1, 0, 0);

    /// <summary>From what the user read; refused when it cannot be this card's rulers.</summary>
    public static Outcome<PrintScale> From(RulerReadings? readings, CardKind kind)
    {
        if (readings is null)
            return AsDrawn;
        (double u, double v) = (Nominal(kind, alongU: true), Nominal(kind, alongU: false));
        PrintScale scale = new(readings.AlongU.Millimetres / u, readings.AlongV.Millimetres / v, readings.StandardUncertainty.Millimetres / u, readings.StandardUncertainty.Millimetres / v);
        if (Math.Abs(scale.U - 1) <= MostDeviation && Math.Abs(scale.V - 1) <= MostDeviation && scale.UncertaintyU is >= 0 and <= MostDeviation)
            return scale;
        return new Failure(
            CardFailures.RulerReading,
            ImagingTexts.Say("printScale.readingsMmAndMmDo", readings.AlongU.Millimetres, readings.AlongV.Millimetres, kind.Name, u, v),
            ImagingTexts.Get("printScale.measureBothPrintedRulersFrom"));
    }

    public CardPoint ToPrint(CardPoint p) => new(p.U / U, p.V / V);

    public CardPoint FromPrint(CardPoint p) => new(p.U * U, p.V * V);

    public static double Nominal(CardKind kind, bool alongU) => kind.Rulers
        .Select(r => r.To - r.From)
        .Single(r => Math.Abs(r.U) > Math.Abs(r.V) == alongU)
        .Magnitude;
}
