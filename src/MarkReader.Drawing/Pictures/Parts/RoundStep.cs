namespace MarkReader.Drawing.Pictures.Parts;

/// <summary>Round numbers for grids and exaggerations.</summary>
internal static class RoundStep
{
    /// <summary>The largest of …, 1, 2, 5, 10, … that is at most a value; the value is above zero.</summary>
    public static double AtMost(double value)
    {
        double decade = Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-9));
        double part = (value / decade) + 1e-9;
        return decade * (part >= 5 ? 5 : part >= 2 ? 2 : 1);
    }

    /// <summary>The smallest of …, 1, 2, 5, 10, … that is at least a value.</summary>
    public static double AtLeast(double value)
    {
        double below = AtMost(value);
        return below >= value * (1 - 1e-9) ? below : AtMost(below * 2.6);
    }
}
