using System.Globalization;
using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>The bed with the marks of the survey, and the gantry's frame.</summary>
internal static class SurveyPictures
{
    // mm of mark for one mm of height; a weaker answer is not believed here.
    private const double WeakestResponse = -0.25;

    /// <returns>Null without a bed, and before the survey.</returns>
    public static VisitPicture? Bed(PictureSource source)
    {
        BedPlace? next = source is { IsBefore: false, Advice.Action: VisitAction.Survey survey } ? new(survey.X, survey.Y) : null;
        IReadOnlyList<SurveyMark> marks = source.Marks.Survey;
        if (source.Setup.Bed is not { } bed || (marks.Count == 0 && next is null))
            return null;
        VisitPictureWords words = source.Words;
        BedCorner? corner = Twist(source)?.Corner;
        BedMap map = new(
            source.IsBefore ? words.BedTitleBefore : words.BedTitle,
            new(bed.Travels.X, bed.Travels.Y),
            [.. marks.Select(m => new SurveyedMark(source.Marks.NumberOf(m), new(m.X, m.Y), m.Mark.Point))])
        {
            Tolerance = bed.Tolerance,
            StandsOut = corner is { } c ? Place(bed.Travels, c) : null,
            Next = next,
            Style = source.Style.Style,
        };
        List<string> each = [], sentences = [];
        foreach (SurveyedMark mark in map.Marks)
        {
            CardVector off = mark.Mark - map.Middle;
            each.Add(VisitPictureWords.Fill(
                words.SurveyMark, mark.Number.ToString(CultureInfo.InvariantCulture), source.Round(mark.At.X), source.Round(mark.At.Y), source.Text(off.U), source.Text(off.V)));
        }

        if (corner is { } odd)
            sentences.Add(VisitPictureWords.Fill(words.StandsOut, words.Corner(odd)));
        if (next is not null)
            sentences.Add(VisitPictureWords.Fill(words.Next, source.Round(next.X), source.Round(next.Y)));
        return new("bed", new PictureSentences(each, sentences), map);
    }

    /// <returns>Null when no twist was found.</returns>
    public static VisitPicture? Frame(PictureSource source)
    {
        if (source.Setup.Bed is not { } bed || Lift(source) is not { } lift)
            return null;
        VisitPictureWords words = source.Words;
        TwistedFrame frame = new(
            source.IsBefore ? words.FrameTitleBefore : words.FrameTitle,
            new(bed.Travels.X, bed.Travels.Y),
            [.. BedCorners.All.Select(c => new StandingCorner(
                words.Corner(c), c.IsRight(), c.End() == GantryEnd.Far, c == lift.Corner ? lift.Height : Length.Zero, c == lift.Corner ? lift.Shim : null))])
        {
            Style = source.Style.Style,
        };
        bool low = lift.Height < Length.Zero;
        string sentence = VisitPictureWords.Fill(low ? words.FrameLow : words.FrameHigh, words.Corner(lift.Corner), source.Text(Math.Abs(lift.Height.Millimetres)));
        return new("frame", lift.Shim is { } shim ? sentence + " " + VisitPictureWords.Fill(words.Shim, source.Text(shim.Millimetres)) : sentence, frame);
    }

    // The frame's corner, from the mark's height: a corner that stands low has a mark that stands high.
    private static (BedCorner Corner, Length Height, Length? Shim)? Lift(PictureSource source)
    {
        if (Twist(source) is not { } twist || source.Advice.State.Survey is not { } survey)
            return null;
        Length height = Length.FromMillimetres(twist.Height / Math.Min(survey.Response.Mean, WeakestResponse));
        return (twist.Corner, height, !source.IsBefore && source.Advice.Action is VisitAction.Shim { Height.Millimetres: > 0 } shim ? shim.Height : null);
    }

    // The corner is the one that is worked on; the height of its mark has the sign of a twist seen from there.
    private static (BedCorner Corner, double Height)? Twist(PictureSource source)
    {
        // A twist that leaves the bed within its tolerance is nothing that stands out.
        if (source.Advice.State.Survey is not { Spread.Verdict: not Verdict.Within, Diagnosis: { } diagnosis } || diagnosis.Findings.OfType<TwistFinding>().FirstOrDefault() is not { } twist)
            return null;
        BedCorner corner = !source.IsBefore && source.Advice.Action is VisitAction.Shim shim ? shim.Corner : twist.Corner;
        return (corner, Sign(corner) * Sign(twist.Corner) * twist.Height.Value);
    }

    private static int Sign(BedCorner corner) => corner is BedCorner.NearLeft or BedCorner.FarRight ? 1 : -1;

    private static BedPlace Place(Bed bed, BedCorner corner)
    {
        (Length x, Length y) = bed.Place(corner);
        return new(x, y);
    }
}
