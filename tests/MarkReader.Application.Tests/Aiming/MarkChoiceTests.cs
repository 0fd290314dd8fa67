using MarkReader.Application.Aiming;
using MarkReader.Application.Tests.Support;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Aiming;

public sealed class MarkChoiceTests
{
    [Fact]
    public void A_single_far_mark_elsewhere_is_the_far_one()
    {
        ChosenMarks marks = MarkChoice.NearAndFar(Some.Photo(Some.Mark(1, 2)), Some.Photo(Some.Mark(5, -3))).ValueOrThrow();
        Assert.Equal(new CardPoint(1, 2), marks.Near.Centre.Point);
        Assert.Equal(new CardPoint(5, -3), marks.Far.Centre.Point);
        Assert.Empty(marks.Warnings);
    }

    [Theory]
    [InlineData(5, -3)]
    [InlineData(-4, 6)]
    [InlineData(1, 3.5)]
    public void Of_two_far_marks_the_one_at_the_near_mark_s_place_is_the_old_one(double u, double v)
    {
        ChosenMarks marks = MarkChoice.NearAndFar(Some.Photo(Some.Mark(1, 2)), Some.Photo(Some.Mark(1.02, 1.99), Some.Mark(u, v))).ValueOrThrow();
        Assert.Equal(new CardPoint(1, 2), marks.Near.Centre.Point);
        Assert.Equal(new CardPoint(u, v), marks.Far.Centre.Point);
        Assert.Empty(marks.Warnings);
    }

    [Fact]
    public void A_near_mark_seen_again_farther_off_than_its_uncertainty_earns_a_warning()
    {
        ChosenMarks marks = MarkChoice.NearAndFar(Some.Photo(Some.Mark(1, 2)), Some.Photo(Some.Mark(1.3, 2), Some.Mark(5, -3))).ValueOrThrow();
        Assert.Equal("nearMarkShifted", Assert.Single(marks.Warnings).Code);
    }

    [Theory]
    [InlineData(1.0, 2.0, "marksCoincide")]
    [InlineData(1.4, 2.0, "marksCoincide")]
    [InlineData(2.5, 2.0, "marksOverlap")]
    public void A_single_far_mark_at_or_over_the_near_one_earns_a_warning(double u, double v, string code)
    {
        ChosenMarks marks = MarkChoice.NearAndFar(Some.Photo(Some.Mark(1, 2)), Some.Photo(Some.Mark(u, v))).ValueOrThrow();
        Assert.Equal(code, Assert.Single(marks.Warnings).Code);
    }

    [Fact]
    public void Photos_that_do_not_tell_the_marks_apart_are_refused()
    {
        Mark near = Some.Mark(1, 2);
        Refused("NO_MARK", MarkChoice.NearAndFar(Some.Photo(), Some.Photo(near)));
        Refused("NO_MARK", MarkChoice.NearAndFar(Some.Photo(near), Some.Photo()));
        Refused("NEAR_MARK_UNCLEAR", MarkChoice.NearAndFar(Some.Photo(near, Some.Mark(4, 4)), Some.Photo(Some.Mark(5, 0))));
        Refused("FAR_MARK_UNCLEAR", MarkChoice.NearAndFar(Some.Photo(near), Some.Photo(near, Some.Mark(4, 4), Some.Mark(-4, 0))));
        Refused("NEAR_MARK_MOVED", MarkChoice.NearAndFar(Some.Photo(near), Some.Photo(Some.Mark(1.6, 2), Some.Mark(4, 4))));
        Refused("MARKS_TOO_CLOSE", MarkChoice.NearAndFar(Some.Photo(near), Some.Photo(Some.Mark(1, 2), Some.Mark(1.4, 2))));
        Refused("MARKS_TOO_CLOSE", MarkChoice.NearAndFar(Some.Photo(near), Some.Photo(Some.Mark(0.6, 2), Some.Mark(1.7, 2))));
        Refused("CARDS_DIFFER", MarkChoice.NearAndFar(Some.Photo(near), Some.Photo("bed", Some.Mark(5, 0))));
    }

    [Fact]
    public void A_near_photo_with_two_marks_and_a_far_photo_with_one_of_them_are_called_swapped() =>
        Refused("PHOTOS_SWAPPED", MarkChoice.NearAndFar(Some.Photo(Some.Mark(1, 2), Some.Mark(5, -3)), Some.Photo(Some.Mark(1.02, 1.99))));

    [Fact]
    public void Uncertain_marks_widen_the_gate()
    {
        // 0.6 mm apart: outside the gate of precise marks, within four standard deviations of these.
        Assert.True(MarkChoice.NearAndFar(Some.Photo(Some.Mark(1, 2, 0.15)), Some.Photo(Some.Mark(1.6, 2, 0.15), Some.Mark(5, 5, 0.15))).TryGet(out _, out _));
    }

    [Theory]
    [InlineData(FirstMark.Left, -2, 1)]
    [InlineData(FirstMark.Right, 3, -4)]
    [InlineData(FirstMark.Upper, -2, 1)]
    [InlineData(FirstMark.Lower, 3, -4)]
    public void On_one_photo_the_side_names_the_near_mark(FirstMark first, double u, double v)
    {
        ChosenMarks marks = MarkChoice.OnePhoto(Some.Photo(Some.Mark(3, -4), Some.Mark(-2, 1)), first).ValueOrThrow();
        Assert.Equal(new CardPoint(u, v), marks.Near.Centre.Point);
        Assert.NotEqual(marks.Near, marks.Far);
        Assert.Empty(marks.Warnings);
    }

    [Fact]
    public void On_one_photo_there_must_be_two_marks_that_differ_in_the_named_direction()
    {
        Refused("NO_MARK", MarkChoice.OnePhoto(Some.Photo(), FirstMark.Left));
        Refused("TWO_MARKS_NEEDED", MarkChoice.OnePhoto(Some.Photo(Some.Mark(1, 1)), FirstMark.Left));
        Refused("TWO_MARKS_NEEDED", MarkChoice.OnePhoto(Some.Photo(Some.Mark(1, 1), Some.Mark(2, 2), Some.Mark(3, 3)), FirstMark.Left));
        Refused("FIRST_MARK_UNCLEAR", MarkChoice.OnePhoto(Some.Photo(Some.Mark(1, 1), Some.Mark(1.19, 5)), FirstMark.Left));
        Assert.True(MarkChoice.OnePhoto(Some.Photo(Some.Mark(1, 1), Some.Mark(1.19, 5)), FirstMark.Upper).TryGet(out _, out _));
    }

    [Theory]
    [InlineData(0, -2)]
    [InlineData(2, 3)]
    public void Sides_are_those_of_the_photo_however_the_card_lies_in_it(int quarterTurns, double u)
    {
        Some.Upright view = new(quarterTurns);
        Mark Seen(double markU, double markV) => Some.Mark(markU, markV) with { Photo = view.ToPhoto(new(markU, markV)) };
        PhotoMeasurement photo = Some.Photo(Seen(3, -4), Seen(-2, 1)) with { Projection = view };
        Assert.Equal(u, MarkChoice.OnePhoto(photo, FirstMark.Left).ValueOrThrow().Near.Centre.Point.U);
    }

    private static void Refused(string code, Outcome<ChosenMarks> outcome)
    {
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }
}
