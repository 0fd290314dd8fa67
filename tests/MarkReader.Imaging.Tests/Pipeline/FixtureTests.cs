using System.Text.Json;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Pipeline;

/// <summary>The photos in fixtures/photos against the truth files beside them.</summary>
public sealed class FixtureTests
{
    [Fact]
    public void There_are_at_least_twenty_photos_with_truth() => Assert.True(Fixtures().Count >= 20);

    [Fact]
    public void Every_mark_is_found_none_is_invented_and_the_rms_error_is_at_most_a_fiftieth_of_a_millimetre()
    {
        List<double> errors = [];
        foreach ((string photo, JsonElement truth) in Fixtures().Where(f => !f.Truth.TryGetProperty("expected", out _)))
        {
            CardPoint[] marks = [.. truth.GetProperty("marks").EnumerateArray().Select(m => new CardPoint(m.GetProperty("u").GetDouble(), m.GetProperty("v").GetDouble()))];
            PhotoMeasurement result = PhotoMeasurer.Measure(File.ReadAllBytes(photo)).ValueOrThrow();
            errors.AddRange(Truth.Errors(marks, result.Marks));
        }

        Assert.True(errors.Count >= 25);
        Assert.InRange(Truth.Rms(errors), 0, 0.02);
    }

    [Fact]
    public void Photos_that_cannot_be_measured_are_refused_with_the_expected_code()
    {
        (string Photo, JsonElement Truth)[] refusals = [.. Fixtures().Where(f => f.Truth.TryGetProperty("expected", out _))];
        Assert.True(refusals.Length >= 3);
        foreach ((string photo, JsonElement truth) in refusals)
        {
            Assert.False(PhotoMeasurer.Measure(File.ReadAllBytes(photo)).TryGet(out _, out Failure? failure));
            Assert.Equal(truth.GetProperty("expected").GetProperty("error").GetString(), failure.Code.Name);
        }
    }

    private static List<(string Photo, JsonElement Truth)> Fixtures() =>
        [.. Directory.GetFiles(Repository.Fixtures, "*.truth.json").Order().Select(path => (PhotoOf(path), JsonDocument.Parse(File.ReadAllText(path)).RootElement))];

    private static string PhotoOf(string truth) => Directory
        .GetFiles(Repository.Fixtures, Path.GetFileName(truth).Replace(".truth.json", ".*", StringComparison.Ordinal))
        .Single(f => !f.EndsWith(".json", StringComparison.Ordinal));
}
