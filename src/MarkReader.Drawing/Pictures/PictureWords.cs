using System.Globalization;

namespace MarkReader.Drawing.Pictures;

/// <summary>The words of the pictures, in English unless they are given otherwise. {0}, {1} stand for numbers.</summary>
public sealed record PictureWords
{
    public string Near { get; init; } = "near";

    public string Far { get; init; } = "far";

    public string Earlier { get; init; } = "pale: earlier marks";

    public string Aim { get; init; } = "aim, 95 %";

    public string Expected { get; init; } = "next mark, 95 %";

    public string Tolerance { get; init; } = "tolerance";

    public string ToGo { get; init; } = "{0} to go";

    public string ToGoAtFirst { get; init; } = "{0} to go, {1} at first";

    public string Grid { get; init; } = "grid {0}";

    public string Pivot { get; init; } = "pivot";

    public string FacingKnobs { get; init; } = "seen facing the knobs";

    public string NearEnd { get; init; } = "near end";

    public string FarEnd { get; init; } = "far end";

    public string Left { get; init; } = "left";

    public string Right { get; init; } = "right";

    public string Next { get; init; } = "next";

    public string StandsOut { get; init; } = "stands out";

    public string ArrowsTimes { get; init; } = "marks from their middle, {0} times as long";

    public string HalfTolerance { get; init; } = "dashed: half the tolerance";

    public string HeightsTimes { get; init; } = "heights drawn {0} times as high";

    public string Flat { get; init; } = "dashed: flat";

    public string Shim { get; init; } = "shim {0}";

    public string TooLow { get; init; } = "{0} too low";

    public string TooHigh { get; init; } = "{0} too high";

    public string Hole { get; init; } = "opening {0}";

    public string Beam { get; init; } = "beam {0} (1/e²)";

    public string Centre { get; init; } = "centre";

    public string BeamPlace { get; init; } = "beam; right: its axis, 95 %";

    public string OffCentre { get; init; } = "{0} from the centre";

    public string Clipped { get; init; } = "{0} % of the power clipped";

    public string ClippedLess { get; init; } = "less than {0} % of the power clipped";

    public string Share { get; init; } = "{0} %";

    public string Whole { get; init; } = "all together {0}";

    public string AsFound { get; init; } = "found";

    public string AsLeft { get; init; } = "left";

    public string Bars { get; init; } = "95 %";

    public static string Fill(string words, params string[] values) => string.Format(CultureInfo.InvariantCulture, words, values);
}
