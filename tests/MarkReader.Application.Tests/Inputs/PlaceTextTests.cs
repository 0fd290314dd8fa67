using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Inputs;

public sealed class PlaceTextTests
{
    [Theory]
    [InlineData("1520,980")]
    [InlineData(" 1520, 980 ")]
    [InlineData("1520;980")]
    [InlineData("1520 980")]
    [InlineData("1520.0,980.0")]
    [InlineData("1520,0 ; 980,0", false)]
    public void A_place_is_two_numbers(string text, bool read = true)
    {
        Assert.Equal(read, PlaceText.Read(text).TryGet(out Place? place, out _));
        if (read)
            Assert.Equal(new PixelPoint(1520, 980), place!.Photo);
    }

    [Theory]
    [InlineData("")]
    [InlineData("12")]
    [InlineData("1,2,3")]
    [InlineData("nan,3")]
    [InlineData("3,1e999")]
    [InlineData("left,upper")]
    public void Anything_else_is_refused(string text)
    {
        Assert.False(PlaceText.Read(text).TryGet(out _, out Failure? failure));
        Assert.Equal("PLACE_UNREADABLE", failure.Code.Name);
    }
}
