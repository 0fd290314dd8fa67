using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>A printed card on a target, fresh tape over its free zone, and what practice pulses have burnt into it so far.</summary>
/// <remarks>Immutable: a pulse gives another one. Equal card, number and burns look the same in every photo but for camera, light and noise.</remarks>
public sealed record TapedTarget
{
    private TapedTarget(CardKind card, int number, IReadOnlyList<TapeBurn> burns) => (Card, Number, Burns) = (card, number, burns);

    public CardKind Card { get; }

    /// <summary>Which piece of tape: it decides the look of tape, print, target and burns.</summary>
    public int Number { get; }

    /// <summary>In the order in which they were burnt.</summary>
    public IReadOnlyList<TapeBurn> Burns { get; }

    /// <summary>Tape without a mark.</summary>
    /// <param name="card">The card round it.</param>
    /// <param name="number">Which piece; any number.</param>
    public static TapedTarget Fresh(CardKind card, int number)
    {
        ArgumentNullException.ThrowIfNull(card);
        return new(card, number, []);
    }

    /// <summary>How far a mark's centre may be from the card's, along u and along v, for the mark to lie whole in the free zone; below zero when it cannot.</summary>
    public static Length Reach(CardKind card, Length diameter)
    {
        ArgumentNullException.ThrowIfNull(card);
        return Length.FromMillimetres((card.ZoneSide - diameter.Millimetres) / 2);
    }

    /// <summary>The tape with one mark more, or MARK_OFF_CARD when it would not lie whole in the card's free zone.</summary>
    /// <param name="place">The mark's centre in the card frame.</param>
    /// <param name="diameter">Its diameter (<see cref="TapeBurn.Diameter"/>).</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above zero.</exception>
    public Outcome<TapedTarget> Burn(CardPoint place, Length diameter)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(diameter, Length.Zero);
        double reach = Reach(Card, diameter).Millimetres;
        // Written so that NaN is outside.
        return Math.Abs(place.U) <= reach && Math.Abs(place.V) <= reach
            ? new TapedTarget(Card, Number, [.. Burns, new(place, diameter)])
            : PractisingFailures.OffCard(Card, place, diameter);
    }
}
