using MarkReader.Application.Measuring;
using MarkReader.Application.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Measuring;

public sealed class MeasurePhotoTests
{
    [Fact]
    public void Two_named_places_on_one_mark_are_refused()
    {
        byte[] photo = LegScene.Photo(3, (2, 1));
        PixelPoint mark = Assert.Single(MeasurePhoto.Run(photo).ValueOrThrow().Marks).Photo;
        Assert.False(MeasurePhoto.Run(photo, new() { Taps = [mark, mark + new PixelVector(4, 3)] }).TryGet(out _, out Failure? failure));
        Assert.Equal("SAME_MARK_NAMED", failure.Code.Name);
    }

    [Fact]
    public void A_place_far_outside_the_photo_is_refused_in_few_digits()
    {
        Assert.False(MeasurePhoto.Run(LegScene.Photo(3, (2, 1)), new() { Taps = [new(1e99, 4)] }).TryGet(out _, out Failure? failure));
        Assert.Contains("1E+99, 4", failure.Message, StringComparison.Ordinal);
    }
}
