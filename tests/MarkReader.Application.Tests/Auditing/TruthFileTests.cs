using System.Text;
using MarkReader.Application.Auditing;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Auditing;

public sealed class TruthFileTests
{
    [Fact]
    public void Marks_are_read_and_everything_else_is_left_alone()
    {
        Truth truth = Parse("""{"maker": 1, "marks": [{"u": 1.25, "v": -3, "note": "x"}, {"u": 0, "v": 2e0}]}""").ValueOrThrow();
        Assert.Equal([new CardPoint(1.25, -3), new CardPoint(0, 2)], truth.Marks);
        Assert.Null(truth.ExpectedError);
    }

    [Fact]
    public void What_a_user_measured_is_read_and_checked()
    {
        Truth truth = Parse("""{"marks": [], "measured": {"rulerU": 40.4, "rulerV": 39.9, "rulerUncertainty": 0.1, "tapeHeight": -0.3}}""").ValueOrThrow();
        Assert.Equal(new CardInput(40.4, 39.9, 0.1, -0.3), truth.Measured);
        Assert.Equal(CardInput.Nothing, Parse("""{"marks": []}""").ValueOrThrow().Measured);
        Assert.False(Parse("""{"marks": [], "measured": {"rulerU": 40.4}}""").TryGet(out _, out _));
        Assert.False(Parse("""{"marks": [], "measured": {"tapeHeight": "high"}}""").TryGet(out _, out _));
    }

    [Theory]
    [InlineData("""{"expected": {"error": "NO_CARD"}}""", 0)]
    [InlineData("""{"marks": [{"u": 1, "v": 2}], "expected": {"error": "NO_CARD"}}""", 1)]
    public void An_expected_refusal_is_read_with_or_without_marks(string text, int marks)
    {
        Truth truth = Parse(text).ValueOrThrow();
        Assert.Equal("NO_CARD", truth.ExpectedError);
        Assert.Equal(marks, truth.Marks.Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"marks": 3}""")]
    [InlineData("""{"marks": [{"u": 1}]}""")]
    [InlineData("""{"marks": [{"u": "1", "v": 2}]}""")]
    [InlineData("""{"marks": [], "expected": {"code": "X"}}""")]
    public void Anything_else_is_refused_with_the_file_s_name(string text)
    {
        Assert.False(Parse(text).TryGet(out _, out Failure? failure));
        Assert.Equal("TRUTH_UNREADABLE", failure.Code.Name);
        Assert.Contains("x.truth.json", failure.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"marks": [], "scene": {"kind": "tilt", "seed": 3}}""", "tilt")]
    [InlineData("""{"scene": {"kind": " noCard "}, "expected": {"error": "NO_CARD"}}""", "noCard")]
    [InlineData("""{"marks": []}""", "-")]
    [InlineData("""{"marks": [], "scene": "tilt"}""", "-")]
    [InlineData("""{"marks": [], "scene": ["kind"]}""", "-")]
    [InlineData("""{"marks": [], "scene": {}}""", "-")]
    [InlineData("""{"marks": [], "scene": {"kind": 3}}""", "-")]
    [InlineData("""{"marks": [], "scene": {"kind": null}}""", "-")]
    [InlineData("""{"marks": [], "scene": {"kind": " "}}""", "-")]
    [InlineData("""{"marks": [], "scene": {"kind": "a\nb"}}""", "-")]
    [InlineData("""{"marks": [], "scene": {"kind": "a name of far more than forty characters in all"}}""", "-")]
    public void The_kind_of_scene_is_read_and_anything_else_names_none(string text, string kind) => Assert.Equal(kind, Parse(text).ValueOrThrow().Kind);

    private static Outcome<Truth> Parse(string text) => TruthFile.Parse("x.truth.json", Encoding.UTF8.GetBytes(text));
}
