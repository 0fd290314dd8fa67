using MarkReader.Application.Measuring;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>What a user says of a card that is checked, mm, not yet looked at; null: not said.</summary>
/// <param name="RulerUncertainty">Standard uncertainty of each; <see cref="CardInput.DefaultRulerUncertainty"/> when null.</param>
/// <param name="Limit">Largest error of a mark that the card may cause; <see cref="UsualLimit"/> when null.</param>
public sealed record CardCheckInput(double? RulerU = null, double? RulerV = null, double? RulerUncertainty = null, double? Limit = null)
{
    /// <summary>A tenth of the 0.5 mm to which a leg is usually brought (common practice, no source: a gauge errs by at most a tenth of what it judges).</summary>
    public const double UsualLimit = 0.05;

    private const double LeastLimit = 0.001, MostLimit = 10;

    internal Length LimitOrUsual => Length.FromMillimetres(Limit ?? UsualLimit);

    /// <summary>The readings of the rulers, or null when there are none; the first thing wrong is the refusal.</summary>
    internal Outcome<CheckedReadings> Read()
    {
        if (Limit is { } limit && !(limit is >= LeastLimit and <= MostLimit))
            return new Failure(CardCheckInputFailures.LimitInvalid, CardCheckTexts.Word("input.limit", new SaidLength(limit), new SaidLength(LeastLimit), new SaidLength(MostLimit)), CardCheckTexts.Word("input.limitHint", new SaidLength(UsualLimit)));
        return new CardInput(RulerU, RulerV, RulerUncertainty).ApplyTo(new()).TryGet(out MeasureOptions? options, out Failure? failure) ? new CheckedReadings(options.Rulers) : failure;
    }
}

/// <param name="Rulers">Null when nobody measured them.</param>
internal sealed record CheckedReadings(RulerReadings? Rulers);
