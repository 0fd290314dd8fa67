using System.Globalization;
using MarkReader.Cards;

namespace MarkReader.Drawing.Cards;

/// <summary>The words printed on a card's page.</summary>
internal static class SheetWords
{
    public static string Subtitle(CardKind kind) =>
        string.Create(CultureInfo.InvariantCulture, $"Card for {kind.Purpose}. Free zone {kind.ZoneSide} mm × {kind.ZoneSide} mm, cut to {kind.OuterSide} mm × {kind.OuterSide} mm.");

    public static IReadOnlyList<string> Steps(CardKind kind, bool longRulers)
    {
        string ruler = kind.Rulers[0].From.DistanceTo(kind.Rulers[0].To).ToString("0.#", CultureInfo.InvariantCulture);
        string measure = longRulers
            ? $"Measure with a steel rule: the long rulers on this page are {SheetLayout.ScaleLength:0} mm from end to end, those on the card {ruler} mm. If a long one is off by more than 0.5 mm, correct the printer's scale and print again."
            : $"Measure with a steel rule: both rulers are {ruler} mm from end to end. If one is off by more than 0.5 mm, correct the printer's scale and print again.";
        return
        [
            "Print at 100 % (actual size), never 'fit to page', on plain matt paper.",
            measure,
            "Cut along the thin line.",
            "Fix the card flat on the target, arrow up, with tape on its white border only. The black squares stay uncovered.",
            "Burn inside the free zone, between the four corner ticks: on the paper itself, or on masking tape laid into the zone. Nothing else goes there.",
            "Leave the card in place between the near and the far pulse. Photograph all of it, sharp and without glare.",
        ];
    }

    public static string CautionsIntroduction =>
        "Class 4 laser, invisible (10.6 µm): it burns skin and eyes, also by reflection. The supply carries lethal high voltage, also for some time after it is switched off.";

    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Never reach in while the laser can fire; close the lid and keep the interlocks working.",
        "Wear eyewear marked for 10 600 nm (EN 207).",
        "Use the lowest power and the shortest pulse that leave a mark; nothing reflective in the path.",
        "Paper and tape can catch fire: extraction on, an extinguisher at hand, stay with the machine.",
        "Switch off, unplug and wait as the maker says before touching the tube's mounts or wiring.",
        "The card serves to measure; it is no permission. The maker's manual, local codes and qualified service staff come first.",
    ];

    public static string ScaleCaption => string.Create(CultureInfo.InvariantCulture, $"Print scale: {SheetLayout.ScaleLength} mm both ways, end to end");
}
