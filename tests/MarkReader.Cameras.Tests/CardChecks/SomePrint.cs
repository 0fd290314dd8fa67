using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.CardChecks;

/// <summary>The simulated card as it is asked about.</summary>
internal static class SomePrint
{
    public static CheckedPrint Plate { get; } = new(Length.FromMillimetres(2 * SimulatedCard.Half), Length.FromMillimetres(SimulatedCard.Zone), null);
}
