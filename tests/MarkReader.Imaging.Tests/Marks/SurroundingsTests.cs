using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Marks;

public sealed class SurroundingsTests
{
    [Fact]
    public void A_gradient_of_light_shows_as_its_first_harmonic()
    {
        // On a ring of mean radius 2.25 mm a gradient of 0.04 per mm on 0.5 makes a first harmonic of 0.18.
        CardVector uneven = Surroundings.Unevenness(Burns.Map((x, y) => 0.5 + (0.02 * x)), CardPoint.Origin, 2)!.Value;
        Assert.Equal(0.02 * 2.25 / 0.5, uneven.U, 0.003);
        Assert.Equal(0, uneven.V, 0.003);
    }

    [Fact]
    public void Where_less_than_half_of_the_ring_is_seen_nothing_is_said() =>
        Assert.Null(Surroundings.Unevenness(Burns.Map((x, _) => x > -0.5 ? double.NaN : 0.5), CardPoint.Origin, 2));
}
