using MarkReader.Cards;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>Real photos of real prints, from the documentation of OpenCV 4.6 (see OpenData/README.md), through the stages that find a card.</summary>
public sealed class OpenPhotosTests
{
    private const double Square = 40;

    [Theory]
    [InlineData("choriginal.jpg")]
    [InlineData("gboriginal.png")]
    [InlineData("singlemarkersoriginal.jpg")]
    [InlineData("left01.jpg")]
    public void Boards_and_markers_of_other_dictionaries_are_no_card(string name)
    {
        Assert.False(PhotoMeasurer.Measure(Bytes(name)).TryGet(out _, out Failure? failure));
        Assert.Equal("NO_CARD", failure!.Code.Name);
    }

    [Theory]
    [InlineData("choriginal.jpg", 17)]
    [InlineData("singlemarkersoriginal.jpg", 6)]
    public void Every_printed_marker_is_found_once(string name, int count)
    {
        using GreyPhoto photo = Photo(name);
        IReadOnlyList<MarkerSighting> sightings = Sightings(photo);
        Assert.Equal(count, sightings.Count);
        Assert.Equal(count, sightings.Select(s => s.Id).Distinct().Count());
    }

    /// <summary>A hand-held sheet seen by a small camera: its inner corners by our fit to the printed edges and by OpenCV's cornerSubPix.</summary>
    [Fact]
    public void A_real_boards_corners_lie_where_an_independent_corner_finder_sees_them()
    {
        using GreyPhoto photo = Photo("choriginal.jpg");
        CardKind board = Board();
        IReadOnlyList<MarkerSighting> sightings = Sightings(photo);
        Homography rough = Homography.Fit([.. sightings.SelectMany(s => board.Markers.Single(m => m.Id == s.Id).Corners.Zip(s.Corners, (c, p) => (c, p)))])!;
        RegisteredCard card = CardRegistrar.Register(photo, new(board, sightings, rough, 0)).ValueOrThrow();
        Assert.InRange(card.Residual, 0, 0.25);
        PixelPoint[] ours = [.. InnerCorners().Select(card.View.ToPhoto)];
        Point2f[] theirs = Cv2.CornerSubPix(
            photo.Pixels, ours.Select(p => new Point2f((float)p.X, (float)p.Y)), new Size(4, 4), new Size(-1, -1), new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 50, 0.001));
        double rms = Math.Sqrt(ours.Zip(theirs, (a, b) => Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2)).Average());
        // Single corners of a small sharpened JPEG scatter by half a pixel; a wrong pixel convention would move all by as much.
        Assert.InRange(rms, 0, 0.6);
        Assert.InRange(ours.Zip(theirs, (a, b) => a.X - b.X).Average(), -0.25, 0.25);
        Assert.InRange(ours.Zip(theirs, (a, b) => a.Y - b.Y).Average(), -0.25, 0.25);
    }

    private static ReadOnlyMemory<byte> Bytes(string name) => File.ReadAllBytes(Path.Combine(Repository.Root, "tests", "MarkReader.Imaging.Tests", "OpenData", name));

    private static GreyPhoto Photo(string name)
    {
        ReadOnlyMemory<byte> bytes = Bytes(name);
        return PhotoDecoder.DecodeGrey(bytes, PhotoHeaderReader.Read(bytes).ValueOrThrow()).ValueOrThrow();
    }

    private static IReadOnlyList<MarkerSighting> Sightings(GreyPhoto photo)
    {
        using Dictionary dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict6X6_250);
        return MarkerFinder.Find(photo.Pixels, new(1), dictionary);
    }

    private static IEnumerable<CardPoint> InnerCorners() =>
        from row in Enumerable.Range(1, 6)
        from column in Enumerable.Range(1, 4)
        select new CardPoint((column - 2.5) * Square, (3.5 - row) * Square);

    /// <summary>The board as a card: black squares and, in the white ones, markers with ids row by row.</summary>
    private static CardKind Board()
    {
        // The cells are not read here: any pattern of 6 × 6 does.
        MarkerPattern pattern = new(6, [.. Enumerable.Repeat("000000", 6)]);
        List<CardMarker> markers = [];
        for (int row = 0; row < 7; row++)
        {
            for (int column = 0; column < 5; column++)
            {
                if ((row + column) % 2 == 1)
                    markers.Add(new(markers.Count, new((column - 2) * Square, (3 - row) * Square), Square / 2, pattern));
            }
        }

        return CardKinds.Find("plate")! with { Name = "board", OuterSide = 7 * Square, Markers = markers, Patches = [new(new(-2.5 * Square, 3.5 * Square), 5, 7, Square, true)] };
    }
}
