using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Visits;

/// <summary>One wild mark in a corner survey of a sound machine.</summary>
public sealed class VisitWildMarkTests
{
    [Theory]
    [InlineData(BedCorner.FarRight)]
    [InlineData(BedCorner.FarLeft)]
    public void It_is_made_once_more_and_then_left_out_before_anything_is_changed(BedCorner corner)
    {
        List<VisitEvent> events = [.. SomeVisit.Aligned, .. BedCorners.All.Select(c => Seen(c, c == corner ? new(1.6, 1.2) : new(0, 0)))];
        for (int i = 0; i < 8; i++)
        {
            VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, [.. events]);
            if (advice.Action is VisitAction.Done)
            {
                Assert.True(i >= 2, "The wild mark was contradicted twice.");
                return;
            }

            VisitAction.Survey again = Assert.IsType<VisitAction.Survey>(advice.Action);
            events.Add(new VisitEvent.Survey(new(again.X, again.Y, new(new(0.01 * i, 0), Covariance2.Isotropic(0.05)))));
        }

        Assert.Fail("The wild mark was never left out.");
    }

    [Fact]
    public void Marks_that_never_agree_end_in_a_stop()
    {
        List<VisitEvent> events = [.. SomeVisit.Aligned];
        Random random = new(3);
        for (int i = 0; i < 200; i++)
        {
            VisitAdvice advice = SomeVisit.Advise(SomeVisit.Machine, [.. events]);
            if (advice.Action is not VisitAction.Survey again)
            {
                Assert.IsType<VisitAction.Stop>(advice.Action);
                return;
            }

            // Far places only: near ones are marks of leg 2, which would stop earlier.
            double spread = again.Y > Length.Zero ? 3 : 0;
            events.Add(new VisitEvent.Survey(new(again.X, again.Y, new(new(spread * random.NextDouble(), spread * random.NextDouble()), Covariance2.Isotropic(0.05)))));
        }

        Assert.Fail("The survey does not end.");
    }

    [Fact]
    public void Shims_of_this_visit_that_were_too_high_are_taken_out_again()
    {
        VisitEvent[] shimmed = [.. SomeVisit.Aligned, .. SomeVisit.Survey(farRight: 0.6), new VisitEvent.Shim(BedCorner.FarRight, Some.Mm(2)), SomeVisit.At(BedCorner.FarLeft), Seen(BedCorner.FarRight, new(0, -1.4))];
        VisitAction.Shim less = Assert.IsType<VisitAction.Shim>(SomeVisit.Advise(SomeVisit.Machine, shimmed).Action);
        Assert.Equal(BedCorner.FarRight, less.Corner);
        Assert.InRange(less.Height.Millimetres, -1.7, -1.1);
    }

    private static VisitEvent.Survey Seen(BedCorner corner, CardVector at)
    {
        (Length x, Length y) = SomeVisit.Machine.Bed!.Travels.Place(corner);
        return new(new(x, y, new(CardPoint.Origin + at, Covariance2.Isotropic(0.05))));
    }
}
