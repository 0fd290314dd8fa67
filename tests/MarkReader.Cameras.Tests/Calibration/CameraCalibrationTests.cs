using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.Calibration;

public sealed class CameraCalibrationTests
{
    [Fact]
    public void A_view_that_does_not_fit_is_named_and_left_out()
    {
        SimulatedBoard board = new(3);
        Random random = new(1);
        BoardView[] views = [.. board.Views];
        // As if the board had been bent in one photo: edges off by 0.7 px, each otherwise.
        views[4] = views[4] with { Sightings = [.. views[4].Sightings.Select(s => s with { Seen = s.Seen + ((random.NextDouble() - 0.5) * 2.4 * s.Along) })] };

        CalibratedCamera found = CameraCalibration.Calibrate(views).ValueOrThrow();

        DroppedView dropped = Assert.Single(found.Dropped);
        Assert.Equal(views[4].Name, dropped.Name);
        Assert.InRange(dropped.ResidualPx, 0.5, 1);
        Assert.InRange(dropped.OthersPx, 0.03, 0.1);
        Assert.InRange(Math.Abs(found.Camera.FocalX - board.Camera.FocalX), 0, 4 * found.StandardUncertainties[0]);
    }

    [Fact]
    public void Unequal_focal_lengths_that_the_photos_do_not_show_are_left_out_and_told()
    {
        CalibratedCamera found = CameraCalibration.Calibrate(new SimulatedBoard(2).Views).ValueOrThrow();

        Assert.Contains(found.Evidence, e => e is { Kept: true, Term: CameraTerms.K1, Ratio: > 100 });
        Assert.Contains(found.Evidence, e => e is { Kept: true, Term: CameraTerms.Spread });
        TermEvidence left = Assert.Single(found.Evidence, e => !e.Kept);
        Assert.Equal(CameraTerms.Aspect, left.Term);
        Assert.InRange(left.Ratio, 0, ModelChoice.Threshold);
        Assert.Equal(CameraTerms.All & ~CameraTerms.Aspect, found.Terms);
        Assert.Equal(found.Camera.FocalX, found.Camera.FocalY);
        Assert.Equal(0.03, found.Board.Spread, 0.003);
    }

    [Fact]
    public void Too_few_views_are_refused_with_what_to_do()
    {
        Assert.False(CameraCalibration.Calibrate([.. new SimulatedBoard(1).Views.Take(4)]).TryGet(out _, out Failure? failure));
        Assert.Equal(CalibrationFailures.TooFewViews, failure.Code);
    }

    [Theory]
    [InlineData("0", "0 is 3024 x 4032 px, the other 5 photos are 4032 x 3024 px")]
    [InlineData("0 2", "0, 2 are not 4032 x 3024 px as the other 4 photos are")]
    [InlineData("0 1 2", "as many photos are 3024 x 4032 px (0, 1, 2) as 4032 x 3024 px (3, 4, 5)")]
    public void Views_of_several_sizes_are_refused_and_those_that_differ_from_most_are_named(string upright, string said)
    {
        BoardView[] views = [.. new SimulatedBoard(1).Views.Take(6).Select((v, i) => v with { Name = $"{i}", Photo = upright.Split(' ').Contains($"{i}") ? new(3024, 4032) : new(4032, 3024) })];

        Assert.False(CameraCalibration.Calibrate(views).TryGet(out _, out Failure? failure));
        Assert.Equal((CalibrationFailures.Sizes, said), (failure.Code, failure.Message));
    }

    [Fact]
    public void Views_from_straight_above_only_do_not_determine_a_camera_or_say_so_by_their_uncertainty()
    {
        SimulatedBoard board = new(1);
        BoardView straight = board.Views[0];

        bool calibrated = CameraCalibration.Calibrate([.. Enumerable.Range(0, 6).Select(i => straight with { Name = $"{i}" })]).TryGet(out CalibratedCamera? found, out Failure? failure);

        Assert.True(calibrated ? found!.StandardUncertainties[0] > 5 : failure!.Code == CalibrationFailures.Undetermined);
    }
}
