using MarkReader.Application.Cameras;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cards;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>A card that was checked, and what is to be done.</summary>
/// <param name="Camera">Name of the profile.</param>
/// <param name="Rulers">What was read off them; null when nobody did.</param>
/// <param name="Refused">Photos that showed no usable card.</param>
public sealed record CardFinding(string Camera, CardKind Kind, CheckedCard Card, RulerReadings? Rulers, Length Limit, IReadOnlyList<RefusedPhoto> Refused)
{
    /// <summary>Whether the photos show more than one shape; nothing is then known of the card.</summary>
    public bool ShapesDiffer => Card.ShapesDiffer;

    private bool CanJudge => !ShapesDiffer && RulersAgree;

    private bool RulersAgree => Card.Rulers is not { Agrees: false };

    /// <summary>Of the card taken as drawn; without rulers its size is not judged.</summary>
    public CardVerdict Verdict => CanJudge ? Card.AsDrawn.Against(Limit) : CardVerdict.CannotTell;

    /// <summary>Of the card when its rulers are stated; null without them.</summary>
    public CardVerdict? Corrected => Card.Corrected is null ? null : !CanJudge ? CardVerdict.CannotTell : Card.Corrected.Against(Limit);

    /// <summary>In the order in which they help.</summary>
    public IReadOnlyList<CardAdvice> Advice => ShapesDiffer ? [CardAdvice.PhotographAgain]
        : RulersAgree ? [.. Advices()]
        : BendMatters ? [CardAdvice.TapeFlat, CardAdvice.ReadRulersAgain]
        : [CardAdvice.ReadRulersAgain];

    private bool BendMatters => Card.BendPart > 0.5 * Limit && Card.Bend.Shown;

    private IEnumerable<CardAdvice> Advices()
    {
        if (Verdict == CardVerdict.Good)
        {
            yield return Rulers is null ? CardAdvice.MeasureRulers : CardAdvice.Use;
            yield break;
        }

        bool print = Card.PrintPart > 0.5 * Limit;
        if (BendMatters)
            yield return CardAdvice.TapeFlat;
        if (print && Rulers is null)
            yield return CardAdvice.StateRulersOnceRead;
        if (print)
            yield return CardAdvice.PrintAgain;
        if (print && Corrected == CardVerdict.Good)
            yield return CardAdvice.StateRulers;
        if (Verdict == CardVerdict.CannotTell && Rulers is not null && Corrected != CardVerdict.Good)
            yield return CardAdvice.ReadRulersFiner;
        else if (Verdict == CardVerdict.CannotTell && !print && !BendMatters)
            yield return CardAdvice.MorePhotos;
    }
}

/// <summary>What can be done about a card.</summary>
public enum CardAdvice
{
    Use,

    /// <summary>For its size.</summary>
    MeasureRulers,
    TapeFlat,

    /// <summary>Instead of another print: measuring corrects by them.</summary>
    StateRulers,
    StateRulersOnceRead,
    PrintAgain,

    /// <summary>They contradict the photos.</summary>
    ReadRulersAgain,

    /// <summary>With a calliper.</summary>
    ReadRulersFiner,
    MorePhotos,

    /// <summary>They show more than one shape.</summary>
    PhotographAgain,
}
