using MarkReader.Alignment.Frames;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Frames;

public sealed class MirrorFrameTests
{
    public static TheoryData<string, FailureCode> Wrong => new()
    {
        { "arm 0", FrameFailures.ArmInvalid },
        { "arm NaN", FrameFailures.ArmInvalid },
        { "pitch NaN", FrameFailures.PitchInvalid },
        { "pitch 60", FrameFailures.PitchInvalid },
        { "one screw", FrameFailures.ContactsInvalid },
        { "same corner", FrameFailures.ContactsInvalid },
        { "same name", FrameFailures.ScrewNameInvalid },
        { "no name", FrameFailures.ScrewNameInvalid },
        { "on a line", FrameFailures.ContactsInvalid },
        { "place NaN", FrameFailures.ContactsInvalid },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_frame_that_cannot_be_is_refused_with_its_own_code(string what, FailureCode code)
    {
        ScrewCorner a = new("A", FrameCorner.LowerRight), b = new("B", FrameCorner.UpperLeft);
        Outcome<MirrorFrame> outcome = what switch
        {
            "arm 0" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a, b], 0, 0.7),
            "arm NaN" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a, b], double.NaN, 0.7),
            "pitch NaN" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a, b], 30, double.NaN),
            "pitch 60" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a, b], 30, 60),
            "one screw" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a], 30, 0.7),
            "same corner" => MirrorFrame.AtCorners(FrameCorner.LowerRight, [a, b], 30, 0.7),
            "same name" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a, b with { Screw = "A" }], 30, 0.7),
            "no name" => MirrorFrame.AtCorners(FrameCorner.LowerLeft, [a, b with { Screw = " " }], 30, 0.7),
            "on a line" => MirrorFrame.Of([new(null, 0, 0), new("A", 10, 10), new("B", 20, 20)], 0.7),
            _ => MirrorFrame.Of([new(null, 0, 0), new("A", double.NaN, 0), new("B", 0, 20)], 0.7),
        };
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code);
    }

    [Fact]
    public void A_frame_of_three_screws_has_no_pivot()
    {
        MirrorFrame frame = MirrorFrame.AtCorners(null, [new("A", FrameCorner.LowerRight), new("B", FrameCorner.UpperLeft), new("C", FrameCorner.UpperRight)], 30, 0.7).ValueOrThrow();
        Assert.Equal(["A", "B", "C"], frame.Screws);
    }
}
