using MarkReader.Cards;
using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace MarkReader.Imaging.Tests.Fiducials;

/// <summary>The markers printed on the cards and the board are those of OpenCV's dictionary of the same name.</summary>
public sealed class MarkerDictionaryTests
{
    public static TheoryData<int> Ids { get; } = new(Prints.SelectMany(k => k.Markers.Select(m => m.Id)));

    private static IEnumerable<IPrint> Prints => [.. CardKinds.All, CalibrationBoard.Sheet];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_cell_equals_OpenCVs_dictionary(int id)
    {
        MarkerPattern pattern = Prints.SelectMany(k => k.Markers).Single(m => m.Id == id).Pattern;
        using Dictionary dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict4X4_50);
        using Mat picture = new();

        dictionary.GenerateImageMarker(id, pattern.CellsWithBorder, picture, 1); // one pixel to the cell

        Assert.Equal(new Size(pattern.CellsWithBorder, pattern.CellsWithBorder), picture.Size());
        for (int row = 0; row < pattern.CellsWithBorder; row++)
        {
            for (int column = 0; column < pattern.CellsWithBorder; column++)
                Assert.Equal(picture.At<byte>(row, column) > 127, pattern.IsWhite(column, row));
        }
    }
}
