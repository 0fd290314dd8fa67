using MarkReader.Application.Texts;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Measuring;

/// <summary>What a user measured of the printed card and the tape, mm, not yet checked; null: not measured.</summary>
/// <param name="RulerU">Length of the printed ruler along u, end to end.</param>
/// <param name="RulerV">Length of the printed ruler along v.</param>
/// <param name="RulerUncertainty">Standard uncertainty of each; <see cref="DefaultRulerUncertainty"/> when null.</param>
/// <param name="TapeHeight">Height of the tape's surface above the card's, negative below it.</param>
/// <param name="TapeHeightUncertainty">Its standard uncertainty; <see cref="UsualTapeUncertainty"/> when null.</param>
public sealed record CardInput(
    double? RulerU = null, double? RulerV = null, double? RulerUncertainty = null, double? TapeHeight = null, double? TapeHeightUncertainty = null)
{
    /// <summary>A steel rule read to about ±0.2 mm: 0.2/√3 ≈ 0.1 mm (JCGM 100:2008, 4.3.7).</summary>
    public const double DefaultRulerUncertainty = 0.1;

    /// <summary>Longest ruler that a card may have, mm; which length is right for the card in the photo is checked with it.</summary>
    public const double LongestRuler = 1000;

    /// <summary>A tape farther from the card than this, mm, belongs to another card.</summary>
    private const double MostHeight = 20;

    private static Wording MeasureRulers => InputTexts.Word("cardInput.measureBothPrintedRulersFrom", Wording.Unit);
    private static Wording MeasureTape => InputTexts.Word("cardInput.giveHeightTapeSurfaceAbove", Wording.Unit);

    public static CardInput Nothing { get; } = new();

    /// <summary>
    /// A quarter of the height, at least 0.05 mm: estimated against a rule's edge, a height is known to about ±40 % (0.4/√3 ≈ 1/4),
    /// and a layer of tape more or less is about ±0.1 mm.
    /// </summary>
    public static double UsualTapeUncertainty(double height) => Math.Max(0.05, Math.Abs(height) / 4);

    /// <summary>How to measure, with these readings; the first thing wrong is the refusal (<see cref="ReadingFailures"/>).</summary>
    public Outcome<MeasureOptions> ApplyTo(MeasureOptions options) => (Rulers() ?? Tape()) is { } wrong
        ? wrong
        : options with
        {
            Rulers = RulerU is { } u && RulerV is { } v ? new(Mm(u), Mm(v), Mm(RulerUncertainty ?? DefaultRulerUncertainty)) : null,
            Tape = TapeHeight is { } height ? new(Mm(height), Mm(TapeHeightUncertainty ?? UsualTapeUncertainty(height))) : Imaging.Pipeline.TapeHeight.OnCard,
        };

    private Failure? Rulers()
    {
        if (RulerU is null && RulerV is null)
            return RulerUncertainty is null ? null : new(ReadingFailures.RulerMissing, InputTexts.Get("cardInput.rulersUncertaintyGivenWithoutTheir"), MeasureRulers);
        if (RulerU is null || RulerV is null)
            return new(ReadingFailures.RulerMissing, InputTexts.Word("cardInput.lengthRulerAlongMissing", Name(along: RulerU is null ? "u" : "v")), MeasureRulers);
        return Ruler(RulerU.Value, "u") ?? Ruler(RulerV.Value, "v") ?? RulerUncertain();
    }

    private static Failure? Ruler(double length, string along) => length > 0 && length <= LongestRuler
        ? null
        : new(ReadingFailures.RulerInvalid, InputTexts.Word("cardInput.lengthRulerAlongNotBetween", Said(length), Name(along), Said(LongestRuler)), MeasureRulers);

    private static string Name(string along) => InputTexts.Get($"cardInput.ruler.{along}");

    private Failure? RulerUncertain()
    {
        double most = Math.Min(RulerU!.Value, RulerV!.Value) / 10;
        return RulerUncertainty is null or >= 0 && !(RulerUncertainty > most)
            ? null
            : new(ReadingFailures.RulerUncertaintyInvalid, InputTexts.Word("cardInput.rulersUncertaintyNotBetweenAnd", Said(RulerUncertainty.Value)), InputTexts.Word("cardInput.giveStandardUncertaintyAboutFor", Said(DefaultRulerUncertainty)));
    }

    private Failure? Tape()
    {
        if (TapeHeight is not { } height)
            return TapeHeightUncertainty is null ? null : new(ReadingFailures.TapeHeightMissing, InputTexts.Get("cardInput.tapeHeightUncertaintyGivenWithout"), MeasureTape);
        if (!(Math.Abs(height) <= MostHeight))
            return new(ReadingFailures.TapeHeightInvalid, InputTexts.Word("cardInput.tapeHeightNotBetweenAnd", Said(height), new SaidLength(-MostHeight, HasUnit: false), Said(MostHeight)), MeasureTape);
        return TapeHeightUncertainty is null or (>= 0 and <= MostHeight)
            ? null
            : new(ReadingFailures.TapeHeightUncertaintyInvalid, InputTexts.Word("cardInput.tapeHeightUncertaintyNotBetween", Said(TapeHeightUncertainty.Value), Said(MostHeight)), InputTexts.Word("cardInput.giveStandardUncertaintyInOr", Wording.Unit));
    }

    private static Length Mm(double value) => Length.FromMillimetres(value);

    private static SaidLength Said(double value) => new(value);
}
