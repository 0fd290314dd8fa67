using System.Globalization;
using MarkReader.Alignment.Survey;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>Titles and descriptions of a visit's pictures, in English unless they are given otherwise. {0}, {1} … stand for names and numbers.</summary>
public sealed record VisitPictureWords
{
    public string TargetTitle { get; init; } = "Target of leg {0}";

    public string TargetTitleBefore { get; init; } = "Target of leg {0}, as found";

    public string ScrewTitle { get; init; } = "Leg {0}: turn screw {1}";

    public string BedTitle { get; init; } = "Marks over the bed";

    public string BedTitleBefore { get; init; } = "Marks over the bed, as found";

    public string FrameTitle { get; init; } = "The gantry's frame";

    public string FrameTitleBefore { get; init; } = "The gantry's frame, as found";

    public string ApertureTitle { get; init; } = "The beam in the head's entry hole";

    public string ApertureTitleBefore { get; init; } = "The beam in the entry hole, as found";

    public string BudgetTitle { get; init; } = "Aim point of leg {0}: uncertainty";

    public string Near { get; init; } = "near";

    public string AimShort { get; init; } = "aim";

    public string Far { get; init; } = "far";

    public string Mark { get; init; } = "Mark {0}, {1}: u {2}, v {3}.";

    public string MarkEarlier { get; init; } = "Mark {0}, {1}, before a change: u {2}, v {3}.";

    public string Aim { get; init; } = "Aim point: u {0}, v {1}; with 95 % within {2} by {3} of it.";

    public string Expected { get; init; } = "The next mark should lie at u {0}, v {1}.";

    public string ExpectedOneOf { get; init; } = "The next mark may lie at u {0}, v {1}.";

    public string ToGo { get; init; } = "The last far mark is {0} from the aim point.";

    public string ToGoAtFirst { get; init; } = "The last far mark is {0} from the aim point, the first one was {1} from it.";

    public string Screw { get; init; } = "The frame seen facing its knobs. Turn screw {0}, {1}: {2}.";

    public string LowerLeft { get; init; } = "lower left";

    public string LowerRight { get; init; } = "lower right";

    public string UpperLeft { get; init; } = "upper left";

    public string UpperRight { get; init; } = "upper right";

    public string SurveyMark { get; init; } = "Mark {0} at x {1}, y {2}: u {3}, v {4} from the middle of the marks.";

    public string StandsOut { get; init; } = "The {0} corner stands out.";

    public string Next { get; init; } = "The next mark is to be made at x {0}, y {1}.";

    public string FrameLow { get; init; } = "The {0} corner of the gantry's frame stands about {1} too low against the other three.";

    public string FrameHigh { get; init; } = "The {0} corner of the gantry's frame stands about {1} too high against the other three.";

    public string Shim { get; init; } = "Put shims of {0} under it.";

    public string NearLeft { get; init; } = "near left";

    public string NearRight { get; init; } = "near right";

    public string FarLeft { get; init; } = "far left";

    public string FarRight { get; init; } = "far right";

    public string Aperture { get; init; } = "The beam's axis lies at u {0}, v {1} from the centre of the entry hole of {2}, {3} away; the tolerance is {4}.";

    public string Clipped { get; init; } = "The hole keeps back {0} % of the power of a beam of {1} (1/e²).";

    public string ClippedLess { get; init; } = "The hole keeps back less than 0.01 % of the power of a beam of {0} (1/e²).";

    public string Marks { get; init; } = "Marks";

    public string PathLengths { get; init; } = "Path lengths";

    public string PivotOffset { get; init; } = "Pivot of the beam";

    public string Other { get; init; } = "Other";

    public string Budget { get; init; } = "The aim point of leg {0} has a standard uncertainty of {1} in each direction.";

    public string BudgetPart { get; init; } = "{0}: {1}, {2} % of the variance.";

    internal string Corner(BedCorner corner) => corner switch
    {
        BedCorner.NearLeft => NearLeft,
        BedCorner.NearRight => NearRight,
        BedCorner.FarLeft => FarLeft,
        _ => FarRight,
    };

    internal string Source(UncertaintySource source) => source switch
    {
        UncertaintySource.Noise => Marks,
        UncertaintySource.PathLengths => PathLengths,
        UncertaintySource.PivotOffset => PivotOffset,
        _ => Other,
    };

    internal static string Fill(string words, params string[] values) => string.Format(CultureInfo.InvariantCulture, words, values);
}
