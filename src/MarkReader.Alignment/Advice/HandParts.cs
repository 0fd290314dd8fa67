using System.Globalization;
using MarkReader.Alignment.Texts;

namespace MarkReader.Alignment.Advice;

/// <summary>Turns in parts that a hand can set.</summary>
internal static class HandParts
{
    /// <summary>The least part of a turn that a hand sets by eye, 11°: common practice, no source. It is four times the 1/128 turn by which a setting is taken to be off.</summary>
    public const double Least = 1.0 / 32;

    private static readonly int[] Parts = [16, 32, 64, 128];

    /// <summary>The coarsest part of a turn within <paramref name="allowed"/> of the wanted turn, else the finest.</summary>
    public static double Round(double turns, double allowed)
    {
        double rounded = 0;
        foreach (int part in Parts)
        {
            rounded = Math.Round(turns * part) / part;
            if (Math.Abs(rounded - turns) <= allowed)
                break;
        }

        return rounded;
    }

    /// <summary>"3/16 turn clockwise", "1 1/8 turns counter-clockwise", "5/64 turn (28°) clockwise".</summary>
    public static string Say(double turns) => AdviserTexts.Say("turn.directed", Size(turns), Direction(turns));

    /// <summary>The same without the direction.</summary>
    public static string Size(double turns) => Size(turns, true);

    private static string Size(double turns, bool degrees)
    {
        long parts = (long)Math.Round(Math.Abs(turns) * Parts[^1]), whole = parts / Parts[^1], over = parts % Parts[^1], under = Parts[^1];
        while (over > 0 && over % 2 == 0)
            (over, under) = (over / 2, under / 2);
        string fraction = over == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"{over}/{under}");
        string amount = whole == 0 ? fraction : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}").TrimEnd();
        string size = whole > 1 || (whole == 1 && over > 0) ? AdviserTexts.Say("turn.several", amount) : AdviserTexts.Say("turn.one", amount);
        return degrees && over > 0 && under > 16 ? AdviserTexts.Say("turn.withDegrees", size, 360 * Math.Abs(turns)) : size;
    }

    /// <summary>
    /// What a hand is told to do: "3/16 turn clockwise"; of a turn that is no multiple of the least part, the nearest one, on which side of it the rest lies,
    /// and the whole in degrees: "a touch more than 1/32 turn clockwise (14°)", "a touch clockwise, less than 1/32 turn (3°)".
    /// </summary>
    public static string Advise(double turns)
    {
        if (!IsFine(turns))
            return Say(turns);
        double size = Math.Abs(turns), degrees = 360 * size, settable = Math.Round(size / Least) * Least;
        return settable == 0
            ? AdviserTexts.Say("turn.touch", Direction(turns), Size(Least, false), degrees)
            : AdviserTexts.Say(size > settable ? "turn.more" : "turn.less", Size(settable, false), Direction(turns), degrees);
    }

    /// <summary>Whether a turn is no multiple of the least part that a hand sets.</summary>
    public static bool IsFine(double turns) => Math.Abs((turns / Least) - Math.Round(turns / Least)) > 1e-6;

    /// <summary>The direction, as seen facing the knob.</summary>
    public static string Direction(double turns) => turns < 0 ? AdviserTexts.Get("turn.counterClockwise") : AdviserTexts.Get("turn.clockwise");
}
