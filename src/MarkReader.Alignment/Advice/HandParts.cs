using System.Globalization;
using MarkReader.Alignment.Texts;

namespace MarkReader.Alignment.Advice;

/// <summary>Turns in parts that a hand can set.</summary>
internal static class HandParts
{
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
    public static string Size(double turns)
    {
        long parts = (long)Math.Round(Math.Abs(turns) * Parts[^1]), whole = parts / Parts[^1], over = parts % Parts[^1], under = Parts[^1];
        while (over > 0 && over % 2 == 0)
            (over, under) = (over / 2, under / 2);
        string fraction = over == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"{over}/{under}");
        string amount = whole == 0 ? fraction : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}").TrimEnd();
        string size = whole > 1 || (whole == 1 && over > 0) ? AdviserTexts.Say("turn.several", amount) : AdviserTexts.Say("turn.one", amount);
        return over > 0 && under > 16 ? AdviserTexts.Say("turn.withDegrees", size, 360 * Math.Abs(turns)) : size;
    }

    /// <summary>The direction, as seen facing the knob.</summary>
    public static string Direction(double turns) => turns < 0 ? AdviserTexts.Get("turn.counterClockwise") : AdviserTexts.Get("turn.clockwise");
}
