using MarkReader.Application.Texts;
using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>Refusals of practice.</summary>
public static class PractisingFailures
{
    /// <summary>The pulse left a mark, but not whole in the card's free zone.</summary>
    public static readonly FailureCode MarkOffCard = new("MARK_OFF_CARD", FailureKind.NotMeasurable);

    /// <summary>The machine that is asked for is beyond what can be practised on.</summary>
    public static readonly FailureCode MachineInvalid = new("PRACTICE_MACHINE_INVALID", FailureKind.BadInput);

    /// <summary>The visit is to a real machine.</summary>
    public static readonly FailureCode NotPractice = new("NOT_PRACTICE", FailureKind.BadInput);

    /// <summary>Something other than a pulse comes next.</summary>
    public static readonly FailureCode NoPulseNow = new("NO_PULSE_NOW", FailureKind.BadInput);

    /// <summary>A line that a person wrote is no action.</summary>
    public static readonly FailureCode ActionUnreadable = new("ACTION_UNREADABLE", FailureKind.BadInput);

    internal static Failure OffCard(CardKind card, CardPoint place, Length diameter)
    {
        CardKind? larger = CardKinds.All.FirstOrDefault(k => Math.Max(Math.Abs(place.U), Math.Abs(place.V)) <= TapedTarget.Reach(k, diameter).Millimetres);
        return new(
            MarkOffCard,
            InputTexts.Say("practisingFailures.markAtUVMm", place.U, place.V, diameter.Millimetres, card.Name, card.ZoneSide / 2),
            larger is null
                ? InputTexts.Get("practisingFailures.turnBeamTowardsMiddleTape")
                : InputTexts.Say("practisingFailures.useCardWhoseFreeZone", larger.Name, larger.ZoneSide / 2));
    }
}
