using System.Globalization;
using MarkReader.Alignment.Verdicts;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>How numbers are written for people, and the words that several answers share.</summary>
internal static class Words
{
    /// <summary>Printed under tables that state a region.</summary>
    public static string Region => Get("region");

    /// <summary>Printed under a budget.</summary>
    public static string Budget => Get("budget");

    /// <summary>Printed wherever a pulse was needed or work on the machine is asked for.</summary>
    public static string Cautions => Get("cautions").ReplaceLineEndings();

    /// <summary>A coordinate, with its sign, to 0.001 mm.</summary>
    public static string Place(double mm) => mm.ToString("+0.000;-0.000;0.000", CultureInfo.InvariantCulture);

    public static string Fixed(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>A probability as tests state it.</summary>
    public static string Probability(double p) => p < 0.0001 ? "<0.0001" : Fixed(p, 4);

    /// <summary>The half-lengths of the 95 % region.</summary>
    public static string Region95(Covariance2 covariance)
    {
        Ellipse ellipse = covariance.Ellipse95();
        return $"{Fixed(ellipse.SemiMajor, 3)} x {Fixed(ellipse.SemiMinor, 3)}";
    }

    /// <summary>A verdict: within, undecided or outside.</summary>
    public static string Of(Conformity conformity) => Get("verdict." + conformity.Verdict);

    /// <summary>With which camera profiles photos were measured; why one was not used is a warning.</summary>
    public static IEnumerable<string> Camera(params PhotoMeasurement[] photos) => photos.Select(p => p.CameraProfile).OfType<string>().Distinct()
        .Select(name => photos.All(p => p.CameraProfile == name) ? Say("camera.used", name) : Say("camera.usedForOne", name));

    public static IEnumerable<string> Of(IReadOnlyList<Warning> warnings) => warnings.Select(w => Say("warning", w.Code, w.Message));
}
