using System.Globalization;
using MarkReader.Cards;
using static MarkReader.Quantities.Texts<MarkReader.Drawing.Texts.DrawingTexts>;

namespace MarkReader.Drawing.Cards;

/// <summary>The words printed on a card's page.</summary>
internal static class SheetWords
{
    public static string CautionsIntroduction => Get("sheet.cautions");

    public static IReadOnlyList<string> Cautions =>
        [Get("sheet.caution.lid"), Get("sheet.caution.eyewear"), Get("sheet.caution.power"), Get("sheet.caution.fire"), Get("sheet.caution.unplug"), Get("sheet.caution.maker")];

    public static string ScaleCaption => Say("sheet.scale", SheetLayout.ScaleLength);

    public static string Subtitle(CardKind kind) => Say("sheet.subtitle", kind.Purpose, kind.ZoneSide, kind.OuterSide);

    public static string Subject(CardKind kind) => Say("sheet.subject", kind.Purpose);

    public static IReadOnlyList<string> Steps(CardKind kind, bool longRulers)
    {
        string ruler = kind.Rulers[0].From.DistanceTo(kind.Rulers[0].To).ToString("0.#", CultureInfo.InvariantCulture);
        string measure = longRulers ? Say("sheet.measureLong", SheetLayout.ScaleLength, ruler) : Say("sheet.measure", ruler);
        return [Get("sheet.print"), measure, Get("sheet.cut"), Get("sheet.fix"), Get("sheet.burn"), Get("sheet.leave")];
    }
}
