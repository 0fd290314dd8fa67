using MarkReader.Application.Measuring;
using MarkReader.Application.Practising;
using MarkReader.Cards;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Practising;

/// <summary>Practice photos as the measuring pipeline sees them: real bytes of a JPEG.</summary>
public sealed class PracticePhotographerTests
{
    private const int FewPixels = 2_000_000;

    public static TheoryData<string> Kinds => [.. CardKinds.All.Select(k => k.Name)];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(10)]
    [InlineData(11)]
    public void A_mark_anywhere_in_the_free_zone_is_measured_where_it_is(int seed)
    {
        Random random = new(seed);
        Length diameter = Mm(1.5 + (3.5 * random.NextDouble()));
        double reach = TapedTarget.Reach(Plate, diameter).Millimetres;
        // The first ones lie in the zone's corners.
        double Along() => seed < 3 ? reach * ((2 * random.Next(2)) - 1) : reach * ((2 * random.NextDouble()) - 1);
        CardPoint place = new(Along(), Along());

        byte[] photo = PracticePhotographer.Photograph(TapedTarget.Fresh(Plate, 40 + seed).Burn(place, diameter).ValueOrThrow(), random, FewPixels);

        PhotoMeasurement measurement = MeasurePhoto.Run(photo).ValueOrThrow();
        Mark mark = Assert.Single(measurement.Marks);
        Assert.InRange(mark.Centre.Point.DistanceTo(place), 0, 0.03);
        Assert.Equal(diameter.Millimetres, mark.Diameter.Millimetres, 0.1);
        Assert.Equal("plate", measurement.Card.Kind);
        Assert.Empty(measurement.Warnings);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_of_card_is_photographed_whole(string kind)
    {
        CardKind card = CardKinds.Find(kind)!;
        CardPoint place = new(card.ZoneSide * 0.3, card.ZoneSide * -0.4);
        byte[] photo = PracticePhotographer.Photograph(TapedTarget.Fresh(card, 7).Burn(place, Mm(4)).ValueOrThrow(), new(7));
        PhotoMeasurement measurement = MeasurePhoto.Run(photo).ValueOrThrow();
        Assert.Equal((kind, card.Markers.Count), (measurement.Card.Kind, measurement.Card.MarkersSeen));
        Assert.InRange(Assert.Single(measurement.Marks).Centre.Point.DistanceTo(place), 0, 0.03);
        Assert.InRange((double)measurement.Photo.Width * measurement.Photo.Height / PracticePhotographer.UsualPixels, 0.99, 1);
    }

    [Fact]
    public void Earlier_marks_stay_and_look_as_they_did()
    {
        TapedTarget one = TapedTarget.Fresh(Plate, 9).Burn(new(-4, 2), Mm(3.2)).ValueOrThrow();
        TapedTarget two = one.Burn(new(5, -3), Mm(4)).ValueOrThrow();
        Mark alone = Assert.Single(MeasurePhoto.Run(PracticePhotographer.Photograph(one, new(9), FewPixels)).ValueOrThrow().Marks);
        IReadOnlyList<Mark> both = MeasurePhoto.Run(PracticePhotographer.Photograph(two, new(9), FewPixels)).ValueOrThrow().Marks;
        Assert.Equal(2, both.Count);
        Assert.InRange(both[0].Centre.Point.DistanceTo(alone.Centre.Point), 0, 0.002);
        Assert.Equal(alone.Diameter.Millimetres, both[0].Diameter.Millimetres, 0.01);
        Assert.Equal(alone.Shape.Contrast, both[0].Shape.Contrast, 0.01);
        Assert.InRange(both[1].Centre.Point.DistanceTo(new(5, -3)), 0, 0.03);
    }

    [Fact]
    public void Fresh_tape_shows_no_mark()
    {
        Assert.False(MeasurePhoto.Run(PracticePhotographer.Photograph(TapedTarget.Fresh(Plate, 3), new(3), FewPixels)).TryGet(out _, out Failure? failure));
        Assert.Equal(MeasurePhoto.NoMarkCode, failure.Code);
    }

    [Fact]
    public void Equal_seeds_give_equal_photos_and_the_next_photo_is_another()
    {
        TapedTarget tape = TapedTarget.Fresh(Plate, 5).Burn(new(1, 1), Mm(3)).ValueOrThrow();
        Random random = new(5);
        byte[] first = PracticePhotographer.Photograph(tape, random, PracticePhotographer.FewestPixels);
        byte[] next = PracticePhotographer.Photograph(tape, random, PracticePhotographer.FewestPixels);
        Assert.Equal(first, PracticePhotographer.Photograph(tape, new(5), PracticePhotographer.FewestPixels));
        Assert.NotEqual(first, next);
    }

    [Theory]
    [InlineData(PracticePhotographer.FewestPixels - 1)]
    [InlineData(PracticePhotographer.MostPixels + 1)]
    public void Pixels_that_no_phone_takes_are_a_fault_of_the_caller(int pixels) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PracticePhotographer.Photograph(TapedTarget.Fresh(Plate, 1), new(1), pixels));

    private static CardKind Plate => CardKinds.Find(CardKinds.Default)!;

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
