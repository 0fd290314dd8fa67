using System.Globalization;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Texts;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.Application.Pictures.VisitPictureTexts>;

namespace MarkReader.Application.Pictures;

/// <summary>Titles and descriptions of a visit's pictures, in the reader's language (CurrentUICulture when they are made) unless they are given otherwise. {0}, {1} … stand for names and numbers.</summary>
public sealed record VisitPictureWords
{
    public string TargetTitle { get; init; } = Get("targetTitle");

    public string TargetTitleBefore { get; init; } = Get("targetTitleBefore");

    public string ScrewTitle { get; init; } = Get("screwTitle");

    public string BedTitle { get; init; } = Get("bedTitle");

    public string BedTitleBefore { get; init; } = Get("bedTitleBefore");

    public string FrameTitle { get; init; } = Get("frameTitle");

    public string FrameTitleBefore { get; init; } = Get("frameTitleBefore");

    public string ApertureTitle { get; init; } = Get("apertureTitle");

    public string ApertureTitleBefore { get; init; } = Get("apertureTitleBefore");

    public string BudgetTitle { get; init; } = Get("budgetTitle");

    public string Near { get; init; } = Get("near");

    public string AimShort { get; init; } = Get("aimShort");

    public string Far { get; init; } = Get("far");

    public string Mark { get; init; } = Get("mark");

    public string MarkEarlier { get; init; } = Get("markEarlier");

    public string Aim { get; init; } = Get("aim");

    public string Expected { get; init; } = Get("expected");

    public string ExpectedOneOf { get; init; } = Get("expectedOneOf");

    public string ToGo { get; init; } = Get("toGo");

    public string ToGoAtFirst { get; init; } = Get("toGoAtFirst");

    public string Screw { get; init; } = Get("screw");

    public string LowerLeft { get; init; } = Get("lowerLeft");

    public string LowerRight { get; init; } = Get("lowerRight");

    public string UpperLeft { get; init; } = Get("upperLeft");

    public string UpperRight { get; init; } = Get("upperRight");

    public string SurveyMark { get; init; } = Get("surveyMark");

    public string StandsOut { get; init; } = Get("standsOut");

    public string Next { get; init; } = Get("next");

    public string FrameLow { get; init; } = Get("frameLow");

    public string FrameHigh { get; init; } = Get("frameHigh");

    public string Shim { get; init; } = Get("shim");

    public string NearLeft { get; init; } = Get("nearLeft");

    public string NearRight { get; init; } = Get("nearRight");

    public string FarLeft { get; init; } = Get("farLeft");

    public string FarRight { get; init; } = Get("farRight");

    public string Aperture { get; init; } = Get("aperture");

    public string Clipped { get; init; } = Get("clipped");

    public string ClippedLess { get; init; } = Get("clippedLess");

    public string Marks { get; init; } = Get("marks");

    public string PathLengths { get; init; } = Get("pathLengths");

    public string PivotOffset { get; init; } = Get("pivotOffset");

    public string Other { get; init; } = Get("other");

    public string Budget { get; init; } = Get("budget");

    public string BudgetPart { get; init; } = Get("budgetPart");

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

    internal static string Fill(string words, params string[] values) => CommaPairs.Apart(string.Format(CultureInfo.InvariantCulture, words, values));
}
