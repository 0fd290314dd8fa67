using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Application.Screws;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Screws;

public sealed class FrameTextsTests
{
    [Theory]
    [InlineData("lowerLeft", FrameCorner.LowerLeft)]
    [InlineData("UPPER-RIGHT", FrameCorner.UpperRight)]
    [InlineData("upper left", FrameCorner.UpperLeft)]
    public void A_corner_is_read_as_people_write_it(string text, FrameCorner corner) => Assert.Equal(corner, FrameTexts.Corner(text).ValueOrThrow().Corner);

    [Fact]
    public void A_screw_has_a_name_and_a_corner() => Assert.Equal(new ScrewCorner("A", FrameCorner.LowerRight), FrameTexts.Screw(" A = lowerRight").ValueOrThrow());

    [Theory]
    [InlineData("A=46.5,-0.8,1.2")]
    [InlineData("A = 46,5; -0,8; 1,2")]
    public void A_response_has_two_components_and_their_uncertainty(string text) => Assert.Equal(new KnownResponse("A", 46.5, -0.8, 1.2), FrameTexts.Response(text).ValueOrThrow());

    [Fact]
    public void A_slope_has_two_components() => Assert.Equal(new Components(1.1, -0.2), FrameTexts.Components("1.1,-0.2").ValueOrThrow());

    [Theory]
    [InlineData("FRAME_CORNER_UNKNOWN", "corner", "left")]
    [InlineData("FRAME_CORNER_UNKNOWN", "corner", "1")]
    [InlineData("FRAME_CORNER_UNKNOWN", "corner", "")]
    [InlineData("FRAME_CORNER_UNKNOWN", "screw", "A=middle")]
    [InlineData("FRAME_SCREW_UNREADABLE", "screw", "lowerRight")]
    [InlineData("FRAME_SCREW_UNREADABLE", "screw", "=lowerRight")]
    [InlineData("KNOWN_RESPONSE_UNREADABLE", "response", "A=46.5,0.8")]
    [InlineData("KNOWN_RESPONSE_UNREADABLE", "response", "A=46.5,nan,1")]
    [InlineData("KNOWN_RESPONSE_UNREADABLE", "response", "46.5,0.8,1")]
    [InlineData("COMPONENTS_UNREADABLE", "components", "1.1")]
    [InlineData("COMPONENTS_UNREADABLE", "components", "nan,1")]
    public void Anything_else_is_refused(string code, string what, string text)
    {
        Failure? failure = what switch
        {
            "corner" => Refusal(FrameTexts.Corner(text)),
            "screw" => Refusal(FrameTexts.Screw(text)),
            "response" => Refusal(FrameTexts.Response(text)),
            _ => Refusal(FrameTexts.Components(text)),
        };
        Assert.Equal(code, failure?.Code.Name);
    }

    private static Failure? Refusal<T>(Outcome<T> outcome)
        where T : class => outcome.TryGet(out _, out Failure? failure) ? null : failure;
}
