using System.Collections.Concurrent;
using MarkReader.Imaging.Pipeline;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>The fixture photos as this pipeline measures them, each once for all cross-checks.</summary>
internal static class MeasuredPhotos
{
    private static readonly ConcurrentDictionary<string, Lazy<PhotoMeasurement>> s_known = new();

    public static PhotoMeasurement Of(string photo) => s_known.GetOrAdd(photo, name =>
        new(() => PhotoMeasurer.Measure(File.ReadAllBytes(Path.Combine(Repository.Fixtures, name))).ValueOrThrow())).Value;
}
