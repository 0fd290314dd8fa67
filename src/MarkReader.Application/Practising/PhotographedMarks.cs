using System.Globalization;
using MarkReader.Application.Measuring;
using MarkReader.Cards;
using MarkReader.Imaging.Pipeline;
using MarkReader.Practice.Machines;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>Every mark is burnt into fresh tape on a card, photographed, and measured in the photo.</summary>
/// <param name="cards">The cards to be had, the smallest first: a mark that is not whole in one's free zone is photographed with the next.</param>
/// <param name="keep">Keeps a photo under a name; null when it is kept, else why not.</param>
public sealed class PhotographedMarks(IReadOnlyList<CardKind> cards, Func<string, byte[], Failure?> keep) : IPracticeMeasurement
{
    /// <inheritdoc/>
    public Outcome<MeasuredMark> Measure(BurnMark mark, int number, Random random)
    {
        if (!PulsePhoto.Take(cards, mark, random).TryGet(out byte[]? photo, out Failure? failure))
            return failure;
        string name = string.Create(CultureInfo.InvariantCulture, $"pulse-{number:00}.jpg");
        if (keep(name, photo) is { } notKept)
            return notKept;
        if (!MeasurePhoto.Run(photo).TryGet(out PhotoMeasurement? seen, out failure))
            return failure with { Message = $"{name}: {failure.Message}" };
        // Fresh tape has one mark; anything else that was taken for one lies farther from the card's middle or is smaller.
        MeasuredPoint at = seen.Marks.MaxBy(m => m.Diameter)!.Centre;
        // A photo shows where the mark is; how far the pulses scatter is the machine's.
        return new MeasuredMark(at with { Covariance = at.Covariance + Covariance2.Isotropic(mark.Uncertainty.Millimetres) }, name);
    }
}
