using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Rectification;

public sealed class HomographyTests
{
    /// <summary>
    /// Unit square to the quadrilateral (10,20) (110,30) (100,140) (0,100), worked by hand in rational numbers:
    /// H = [1350/19, −10, 10; 40/19, 1470/19, 20; −5/19, −1/38, 1]; the centre goes to the crossing of the diagonals, (616/13, 908/13).
    /// </summary>
    [Fact]
    public void Four_pairs_give_the_map_worked_by_hand()
    {
        Homography h = Homography.Fit([(new(0, 0), new(10, 20)), (new(1, 0), new(110, 30)), (new(1, 1), new(100, 140)), (new(0, 1), new(0, 100))])!;
        double[] expected = [1350 / 19.0, -10, 10, 40 / 19.0, 1470 / 19.0, 20, -5 / 19.0, -1 / 38.0, 1];
        for (int i = 0; i < 9; i++)
            Assert.Equal(expected[i], h[i / 3, i % 3], 1e-6);
        PixelPoint centre = h.Map(new(0.5, 0.5));
        Assert.Equal(616 / 13.0, centre.X, 1e-6);
        Assert.Equal(908 / 13.0, centre.Y, 1e-6);
    }

    [Fact]
    public void Three_pairs_give_no_map() => Assert.Null(Homography.Fit([(new(0, 0), new(10, 20)), (new(1, 0), new(110, 30)), (new(1, 1), new(100, 140))]));
}
