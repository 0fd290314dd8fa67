using MarkReader.Alignment.Visits;
using MarkReader.Cards;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Marks that are read off by eye and typed.</summary>
public static class TypedMark
{
    /// <summary>Asks whether a mark really is beside the card; null when it lies on it. The large card is laid on the bed, the small one taped to every other target.</summary>
    public static Failure? OffCard(VisitAction pulse, CardPoint at)
    {
        double side = pulse is VisitAction.Fire { Leg: VisitLeg.Three } ? CardKinds.All.Max(k => k.OuterSide) : CardKinds.Find(CardKinds.Default)!.OuterSide;
        return Math.Max(Math.Abs(at.U), Math.Abs(at.V)) <= side / 2
            ? null
            : new(
                VisitLogFailures.TypedOffCard,
                VisitLogTexts.Word("typed.offCard", new SaidLength(at.U, HasUnit: false), new SaidLength(at.V), new SaidLength(side / 2)),
                VisitLogTexts.Get("typed.offCardHint"));
    }
}
