using MarkReader.Cameras.CardChecks;
using MarkReader.Cards;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Boards;

/// <summary>A card's printed rulers and what was read off them.</summary>
public static class CardRulers
{
    /// <summary>Readings over nominal lengths; refused when they cannot be this card's.</summary>
    public static Outcome<RulerScale> Scale(RulerReadings readings, CardKind kind) => PrintScale.From(readings, kind).TryGet(out PrintScale? scale, out Failure? failure)
        ? new RulerScale(scale.U, scale.V, scale.UncertaintyU, scale.UncertaintyV)
        : failure;

    /// <summary>The nominal lengths.</summary>
    public static (Length U, Length V) Nominal(CardKind kind) => (Length.FromMillimetres(PrintScale.Nominal(kind, alongU: true)), Length.FromMillimetres(PrintScale.Nominal(kind, alongU: false)));
}
