using System.Globalization;
using static MarkReader.Quantities.Texts<MarkReader.Drawing.Texts.DrawingTexts>;

namespace MarkReader.Drawing.Pictures;

/// <summary>The words of the pictures, in the reader's language (CurrentUICulture when they are made) unless they are given otherwise. {0}, {1} stand for numbers.</summary>
public sealed record PictureWords
{
    public string Near { get; init; } = Get("picture.near");

    public string Far { get; init; } = Get("picture.far");

    public string Earlier { get; init; } = Get("picture.earlier");

    public string Aim { get; init; } = Get("picture.aim");

    public string Expected { get; init; } = Get("picture.expected");

    public string Tolerance { get; init; } = Get("picture.tolerance");

    public string ToGo { get; init; } = Get("picture.toGo");

    public string ToGoAtFirst { get; init; } = Get("picture.toGoAtFirst");

    public string Grid { get; init; } = Get("picture.grid");

    public string Pivot { get; init; } = Get("picture.pivot");

    public string FacingKnobs { get; init; } = Get("picture.facingKnobs");

    public string NearEnd { get; init; } = Get("picture.nearEnd");

    public string FarEnd { get; init; } = Get("picture.farEnd");

    public string Left { get; init; } = Get("picture.left");

    public string Right { get; init; } = Get("picture.right");

    public string Next { get; init; } = Get("picture.next");

    public string StandsOut { get; init; } = Get("picture.standsOut");

    public string ArrowsTimes { get; init; } = Get("picture.arrowsTimes");

    public string HalfTolerance { get; init; } = Get("picture.halfTolerance");

    public string HeightsTimes { get; init; } = Get("picture.heightsTimes");

    public string Flat { get; init; } = Get("picture.flat");

    public string Shim { get; init; } = Get("picture.shim");

    public string TooLow { get; init; } = Get("picture.tooLow");

    public string TooHigh { get; init; } = Get("picture.tooHigh");

    public string Hole { get; init; } = Get("picture.hole");

    public string Beam { get; init; } = Get("picture.beam");

    public string Centre { get; init; } = Get("picture.centre");

    public string BeamPlace { get; init; } = Get("picture.beamPlace");

    public string OffCentre { get; init; } = Get("picture.offCentre");

    public string Clipped { get; init; } = Get("picture.clipped");

    public string ClippedLess { get; init; } = Get("picture.clippedLess");

    public string Share { get; init; } = Get("picture.share");

    public string Whole { get; init; } = Get("picture.whole");

    public string AsFound { get; init; } = Get("picture.asFound");

    public string AsLeft { get; init; } = Get("picture.asLeft");

    public string Bars { get; init; } = Get("picture.bars");

    public string ErrorsTimes { get; init; } = Get("picture.errorsTimes");

    public string ArrowsAre { get; init; } = Get("picture.arrowsAre");

    public string ErrorNumbers { get; init; } = Get("picture.errorNumbers");

    public string ZoneUp { get; init; } = Get("picture.zoneUp");

    public string LimitIs { get; init; } = Get("picture.limitIs");

    public string UpToHalf { get; init; } = Get("picture.upToHalf");

    public string UpToLimit { get; init; } = Get("picture.upToLimit");

    public string OverLimit { get; init; } = Get("picture.overLimit");

    public static string Fill(string words, params string[] values) => string.Format(CultureInfo.InvariantCulture, words, values);
}
