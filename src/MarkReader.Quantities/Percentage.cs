namespace MarkReader.Quantities;

/// <summary>How finely a part of a whole is told in percent: one decimal where whole numbers would say nothing or all of it.</summary>
public static class Percentage
{
    /// <summary>Decimals of the percentage.</summary>
    /// <param name="share">0 to 1.</param>
    public static int Decimals(double share) => share is < 0.0995 or > 0.9905 and < 0.9995 ? 1 : 0;

    /// <summary>The percentage, rounded to them.</summary>
    public static double Rounded(double share) => Math.Round(100 * share, Decimals(share));
}
