using MarkReader.Cameras.Boards;
using MarkReader.Cameras.CardChecks;
using MarkReader.Cameras.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Cameras.Tests.CardChecks;

public sealed class CardCheckTests
{
    private static readonly Length s_limit = Length.FromMillimetres(0.05);

    [Fact]
    public void Two_photos_or_photos_from_one_side_are_refused_with_what_to_do()
    {
        SimulatedCard card = new(2, new(), views: 9);

        Assert.Equal(CardCheckFailures.TooFewViews, Failing([.. card.Views.Take(2)], card.Camera).Code);
        // The first is from straight above, every fourth from one side.
        Failure oneSide = Failing([card.Views[0], card.Views[1], card.Views[5]], card.Camera);
        Assert.Equal(CardCheckFailures.OneSide, oneSide.Code);
        Assert.Contains("left", oneSide.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Photos_by_another_lens_than_the_profile_says_are_refused()
    {
        SimulatedCard card = new(2, new());
        KnownCamera other = card.Camera with { Model = card.Camera.Model with { FocalX = 1.1 * card.Camera.Model.FocalX, FocalY = 1.1 * card.Camera.Model.FocalY } };

        Failure failure = Failing(card.Views, other);

        Assert.Equal(CardCheckFailures.CameraDiffers, failure.Code);
        Assert.Contains("'phone'", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Views_of_another_size_are_refused()
    {
        SimulatedCard card = new(2, new());

        Failure failure = Failing([.. card.Views.Take(4), card.Views[4] with { Photo = new(3024, 4032) }], card.Camera);

        Assert.Contains(card.Views[4].Name, failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_that_does_not_fit_the_others_is_named_and_left_out()
    {
        SimulatedCard card = new(3, new());
        Random random = new(1);
        BoardView[] views = [.. card.Views];
        // As if the card had been lifted for one photo.
        views[2] = views[2] with { Sightings = [.. views[2].Sightings.Select(s => s with { Seen = s.Seen + ((random.NextDouble() - 0.5) * 4 * s.Along) })] };

        CheckedCard found = CardCheck.Check(views, card.Camera, SomePrint.Plate).ValueOrThrow();

        Assert.Equal(views[2].Name, Assert.Single(found.Dropped).Name);
        Assert.False(found.ShapesDiffer);
        Assert.Equal(CardVerdict.Good, found.AsDrawn.Against(s_limit));
    }

    // As when the card came loose after the second photo, or the fourth of six.
    [Theory]
    [InlineData(2, 4)]
    [InlineData(4, 6)]
    public void Photos_of_two_shapes_are_told_from_those_of_one(int loose, int photos)
    {
        SimulatedCard flat = new(3, new(), views: photos), bent = new(3, new(Sag: 0.6), views: photos);

        CheckedCard mixed = CardCheck.Check([.. flat.Views.Take(loose), .. bent.Views.Skip(loose)], flat.Camera, SomePrint.Plate).ValueOrThrow();

        Assert.True(mixed.ShapesDiffer);
        Assert.False(CardCheck.Check(flat.Views, flat.Camera, SomePrint.Plate).ValueOrThrow().ShapesDiffer);
        Assert.False(CardCheck.Check(bent.Views, flat.Camera, SomePrint.Plate).ValueOrThrow().ShapesDiffer);
    }

    // Prints of one file by two printers, or before and after the paper dried, as photographed in turn: none by much.
    [Theory]
    [InlineData(1.004, 0, 0)]
    [InlineData(1, 0.004, 0)]
    [InlineData(1, 0, 0.4)]
    public void Photos_of_two_slightly_different_prints_are_not_taken_for_those_of_one(double scale, double skew, double sag)
    {
        int told = 0;
        for (int seed = 11; seed <= 16; seed++)
        {
            SimulatedCard one = new(seed, new(), 0.004, views: 6), other = new(seed, new(scale, 1, skew, sag), 0.004, views: 6);

            if (!CardCheck.Check([.. one.Views.Zip(other.Views, (a, b) => (a, b)).Select((v, i) => i % 2 == 0 ? v.a : v.b)], one.Camera, SomePrint.Plate).TryGet(out CheckedCard? mixed, out Failure? failure))
                told += failure.Code == CardCheckFailures.ShapesDiffer ? 1 : 0;
            else
                told += mixed.ShapesDiffer ? 1 : 0;
        }

        Assert.InRange(told, 5, 6);
    }

    // One per cent larger in both directions: the photos are those of a true card from one per cent farther.
    [Fact]
    public void The_size_of_a_print_is_told_by_its_rulers_alone()
    {
        SimulatedCard card = new(5, new(1.01, 1.01));

        CheckedCard silent = CardCheck.Check(card.Views, card.Camera, SomePrint.Plate).ValueOrThrow();
        CheckedCard told = CardCheck.Check(card.Views, card.Camera, SomePrint.Plate with { Rulers = new(1.0102, 1.0099, 0.0003, 0.0003) }).ValueOrThrow();

        Assert.Equal(CardVerdict.Good, silent.AsDrawn.Against(s_limit));
        Assert.Null(silent.ScaleU);
        Assert.Equal(CardVerdict.NotGood, told.AsDrawn.Against(s_limit));
        Assert.Equal(CardVerdict.Good, told.Corrected!.Against(s_limit));
        Assert.True(told.Rulers!.Agrees);
        Assert.InRange(Math.Abs(told.ScaleU!.Value - 1.01), 0, 3 * told.ScaleU.StandardUncertainty);
        // At the zone's corner, 18.4 mm from the middle, one per cent is 0.184 mm; the mark is read nearer to the middle than it is.
        Assert.Equal(0.182, told.AsDrawn.Straight[^1].Error.Magnitude, 0.006);
        Assert.True(told.AsDrawn.Straight[^1].Error is { U: < 0, V: < 0 });
    }

    [Fact]
    public void Rulers_that_contradict_the_photos_are_found_out()
    {
        SimulatedCard card = new(6, new());

        CheckedCard found = CardCheck.Check(card.Views, card.Camera, SomePrint.Plate with { Rulers = new(1.01, 1, 0.001, 0.001) }).ValueOrThrow();

        Assert.False(found.Rulers!.Agrees);
        Assert.Equal(0.01, found.Rulers.Difference, 0.0005);
    }

    [Fact]
    public void Print_and_paper_are_told_apart()
    {
        SimulatedCard bent = new(7, new(Sag: 0.4)), stretched = new(7, new(1.006));

        CheckedCard bend = CardCheck.Check(bent.Views, bent.Camera, SomePrint.Plate).ValueOrThrow(), stretch = CardCheck.Check(stretched.Views, stretched.Camera, SomePrint.Plate).ValueOrThrow();

        Assert.Equal(0.4, bend.Bend.Value, 0.01);
        Assert.True(bend is { Bend.Shown: true, Stretch.Shown: false });
        Assert.True(bend.PrintPart < 0.1 * bend.BendPart);
        Assert.True(stretch is { Bend.Shown: false, Stretch.Shown: true });
        Assert.True(stretch.BendPart < 0.1 * stretch.PrintPart);
    }

    private static Failure Failing(IReadOnlyList<BoardView> views, KnownCamera camera)
    {
        Assert.False(CardCheck.Check(views, camera, SomePrint.Plate).TryGet(out _, out Failure? failure));
        return failure;
    }
}
