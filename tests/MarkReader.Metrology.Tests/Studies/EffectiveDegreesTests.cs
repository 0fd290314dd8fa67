using MarkReader.Metrology.Studies;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>Effective degrees of freedom of a sum of variances against the guide's examples.</summary>
public sealed class EffectiveDegreesTests
{
    /// <summary>JCGM 100:2008, G.4.1: 0.25 %, 0.57 % and 0.82 % from 10, 5 and 15 repeats: 1.03 % with 19.0 degrees of freedom.</summary>
    [Fact]
    public void Three_inputs_of_a_product_have_the_printed_19_degrees()
    {
        MeanSquare sum = MeanSquare.Sum(Of(0.25, 9), Of(0.57, 4), Of(0.82, 14));

        Assert.Equal(1.03, Math.Sqrt(sum.Value), 0.005);
        Assert.Equal(19.0, sum.Dof, 0.05);
    }

    /// <summary>JCGM 100:2008, H.1.6: the end gauge's 25, 9.7, 2.9 and 16.6 nm with 18, 25.6, 50 and 2 degrees: 32 nm with 16.7 (16.75 before rounding).</summary>
    [Fact]
    public void The_end_gauge_has_the_printed_16_degrees()
    {
        MeanSquare sum = MeanSquare.Sum(Of(25, 18), Of(9.7, 25.6), Of(2.9, 50), Of(16.6, 2));

        Assert.Equal(32, Math.Round(Math.Sqrt(sum.Value)));
        Assert.Equal(16.75, sum.Dof, 0.05);
    }

    [Fact]
    public void Equal_parts_add_their_degrees() => Assert.Equal(40, MeanSquare.Sum(Of(3, 10), Of(3, 10), Of(3, 10), Of(3, 10)).Dof, 1e-9);

    private static MeanSquare Of(double uncertainty, double dof) => new(uncertainty * uncertainty, dof);
}
