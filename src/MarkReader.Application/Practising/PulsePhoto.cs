using MarkReader.Cards;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>A practice pulse's mark on fresh tape, photographed.</summary>
public static class PulsePhoto
{
    /// <summary>The cards to be had, the smallest first: a mark that is not whole in one's free zone is photographed with the next.</summary>
    public static IReadOnlyList<CardKind> Cards { get; } = [CardKinds.Find("plate")!, CardKinds.Find("bed")!];

    /// <summary>The JPEG, or MARK_OFF_CARD when the mark is not whole in the free zone of any of the cards.</summary>
    public static Outcome<byte[]> Take(IReadOnlyList<CardKind> cards, BurnMark mark, Random random)
    {
        int tape = random.Next();
        (TapedTarget? target, Failure? failure) = (null, null);
        foreach (CardKind card in cards)
        {
            if (TapedTarget.Fresh(card, tape).Burn(mark.Place, mark.Diameter).TryGet(out target, out failure))
                break;
        }

        return target is null ? failure! : PracticePhotographer.Photograph(target, random);
    }
}
