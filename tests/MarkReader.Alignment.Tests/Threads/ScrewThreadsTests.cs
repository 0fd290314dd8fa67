using MarkReader.Alignment.Threads;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Threads;

/// <summary>Pitches of ISO 261 and 262 and of ASME B1.1, as published thread tables give them.</summary>
public sealed class ScrewThreadsTests
{
    [Theory]
    [InlineData("M1.6", 0.35)]
    [InlineData("M2", 0.4)]
    [InlineData("M2.5", 0.45)]
    [InlineData("M3", 0.5)]
    [InlineData("M4", 0.7)]
    [InlineData("M5", 0.8)]
    [InlineData("M6", 1.0)]
    [InlineData("M8", 1.25)]
    [InlineData("M10", 1.5)]
    [InlineData("M2x0.25", 0.25)]
    [InlineData("M2.5x0.35", 0.35)]
    [InlineData("M4x0.5", 0.5)]
    [InlineData("M5x0.5", 0.5)]
    [InlineData("M6x0.75", 0.75)]
    [InlineData("M8x1", 1)]
    [InlineData("m3 X 0.35", 0.35)]
    [InlineData("#4-40", 0.635)]
    [InlineData("#4-48", 0.529167)]
    [InlineData("#5-40", 0.635)]
    [InlineData("#5-44", 0.577273)]
    [InlineData("#6-32", 0.79375)]
    [InlineData("#6-40", 0.635)]
    [InlineData("#8-32", 0.79375)]
    [InlineData("#8-36", 0.705556)]
    [InlineData("#10-24", 1.058333)]
    [InlineData("#10-32", 0.79375)]
    [InlineData("#12-24", 1.058333)]
    [InlineData("#12-28", 0.907143)]
    [InlineData("1/4-20", 1.27)]
    [InlineData("1/4-28", 0.907143)]
    [InlineData("0.635", 0.635)]
    [InlineData("0.8 mm", 0.8)]
    public void Pitch_of_a_named_thread_is_that_of_the_tables(string name, double pitch) =>
        Assert.Equal(pitch, ScrewThreads.Parse(name).ValueOrThrow().Pitch.Millimetres, 5e-7);

    [Theory]
    [InlineData("", "THREAD_UNKNOWN")]
    [InlineData("M7.3", "THREAD_UNKNOWN")]
    [InlineData("a name much longer than any thread has ever had", "THREAD_UNKNOWN")]
    [InlineData("NaN", "THREAD_PITCH_INVALID")]
    [InlineData("0", "THREAD_PITCH_INVALID")]
    [InlineData("-0.7", "THREAD_PITCH_INVALID")]
    [InlineData("70", "THREAD_PITCH_INVALID")]
    public void Names_that_mean_no_thread_are_refused(string name, string code)
    {
        Assert.False(ScrewThreads.Parse(name).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.True(failure.Message.Length < 100);
    }

    [Fact]
    public void Every_thread_of_the_tables_is_found_by_its_own_name()
    {
        Assert.Equal(31, ScrewThreads.All.Count);
        Assert.Equal(31, ScrewThreads.All.Select(t => t.Name).Distinct().Count());
        Assert.All(ScrewThreads.All, t => Assert.Equal(t, ScrewThreads.Parse(t.Name).ValueOrThrow()));
    }
}
