using CsCheck;
using MarkReader.Quantities;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Surfaces;

namespace MarkReader.Rendering.Tests.Surfaces;

public class BurnSizeTests
{
    [Fact]
    public void A_burn_is_made_to_look_as_wide_as_wanted() => Gen.Select(Gen.Int[0, 10000], Gen.Double[1.5, 8]).Sample((seed, diameter) =>
    {
        BurnSpec burn = TidyScene.Burn(new(seed), 1, 2);
        BurnSpec made = BurnSize.Make(burn, Length.FromMillimetres(diameter));
        Assert.Equal(diameter, BurnSize.Of(made).Millimetres, 0.02);
        Assert.Equal((burn.U, burn.V, burn.EdgeWidth, burn.Density), (made.U, made.V, made.EdgeWidth, made.Density));
    });

    /// <summary>A black disc with a hard edge and no halo falls to half its depth at its edge.</summary>
    [Fact]
    public void A_hard_disc_is_as_wide_as_its_core() =>
        Assert.Equal(3, BurnSize.Of(new BurnSpec(0, 0, 1.5, 0.005, 3, 1.6, 0)).Millimetres, 0.03);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void No_burn_is_made_without_width(double diameter) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BurnSize.Make(new(0, 0), Length.FromMillimetres(diameter)));
}
