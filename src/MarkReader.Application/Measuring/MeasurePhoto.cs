using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Measuring;

/// <summary>The marks of one photo.</summary>
public static class MeasurePhoto
{
    /// <summary>The card was measured and there is no mark in its free zone.</summary>
    public static readonly FailureCode NoMarkCode = new("NO_MARK", FailureKind.NotMeasurable);

    /// <summary>Measures one photo; a photo without a mark is a refusal. Calls may run at the same time.</summary>
    public static Outcome<PhotoMeasurement> Run(ReadOnlyMemory<byte> photo, MeasureOptions? options = null)
    {
        if (!PhotoMeasurer.Measure(photo, options).TryGet(out PhotoMeasurement? measurement, out Failure? failure))
            return failure;
        return measurement.Marks.Count == 0 ? NoMark("") : measurement;
    }

    internal static Failure NoMark(string photo) => new(
        NoMarkCode,
        $"{photo}no mark is seen in the card's free zone",
        "check that the pulse left a mark on the tape inside the zone, and take the photo again in even light");
}
