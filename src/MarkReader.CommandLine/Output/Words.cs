using System.Globalization;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>How numbers are written for people.</summary>
internal static class Words
{
    /// <summary>Printed under tables that state a region.</summary>
    public const string Region = "region: half-lengths of the ellipse that holds the true point with 95 % probability, mm";

    /// <summary>Printed under a budget.</summary>
    public const string Budget = "u: standard uncertainty of either component (root mean square); share: part of the variance";

    /// <summary>Printed wherever a pulse was needed or work on the machine is asked for.</summary>
    public const string Cautions = """
        Cautions for every pulse: the beam is class 4, invisible (10.6 um), and burns skin and eyes, also by reflection.
        Close the lid and keep the interlocks working; never reach in while the laser can fire. Lowest power and shortest
        pulse that leaves a mark; nothing reflective in the path; eyewear marked for 10 600 nm (EN 207); extraction on, an
        extinguisher at hand, stay with the machine. The supply carries lethal voltage, also for some time after it is
        switched off: switch off, unplug and wait as the maker says before touching mounts or wiring. These are
        measurements, not permission: the maker's manual, local codes and qualified service staff come first.
        """;

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

    public static IEnumerable<string> Of(IReadOnlyList<Warning> warnings) => warnings.Select(w => $"warning: {w.Code}: {w.Message}");
}
