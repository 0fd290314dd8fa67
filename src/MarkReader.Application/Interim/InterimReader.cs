using MarkReader.Application.Storage;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>Measures one photo of a set.</summary>
internal static class InterimReader
{
    /// <remarks>Without a camera's profile, also when there is one: a profile may change between two measurements, and what differs is to come from the program alone.</remarks>
    public static InterimPhoto Read(string name, ReadOnlyMemory<byte> bytes)
    {
        string digest = PhotoFiles.Digest(bytes.Span);
        return PhotoMeasurer.Measure(bytes, new()).TryGet(out PhotoMeasurement? measurement, out Failure? refused)
            ? new(name, digest, [.. measurement.Marks.Select(m => m.Centre).OrderBy(m => m.Point.U)], null)
            : new(name, digest, [], refused.Code.Name, refused.Message);
    }
}
