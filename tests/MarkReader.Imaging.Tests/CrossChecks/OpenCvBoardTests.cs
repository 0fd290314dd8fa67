using System.Globalization;
using System.Text.Json;
using MarkReader.Cameras.Calibration;
using MarkReader.Cards;
using MarkReader.Imaging.Boards;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.CrossChecks;

/// <summary>
/// The calibration from the photos in fixtures/camera against OpenCV 4.6's own corners and cv2.calibrateCameraExtended (Debian's
/// python3-opencv; tools/crosscheck/board.py says what differs).
/// </summary>
public sealed class OpenCvBoardTests
{
    private static readonly CrossCheckFile s_file = new("opencv-board.json", "camera");

    private static readonly Lazy<CalibratedCamera> s_ours = new(() =>
        CameraCalibration.Calibrate([.. s_file.Photos.Select(p => BoardMeasurer.Measure(s_file.Bytes(p.Photo), p.Photo).ValueOrThrow().View)]).ValueOrThrow());

    public static TheoryData<string> Photos => [.. s_file.Photos.Select(p => p.Photo)];

    public static TheoryData<string> Terms => [.. CalibratedCamera.Names.Take(9)];

    [Theory]
    [MemberData(nameof(Photos))]
    public void The_values_were_taken_from_the_photo_as_it_is(string photo) =>
        Assert.True(s_file.IsOf(photo), "the photo has changed: run tools/crosscheck/board.py");

    [Theory]
    [MemberData(nameof(Terms))]
    public void Each_term_agrees_within_both_stated_uncertainties(string term)
    {
        int i = CalibratedCamera.Names.ToList().IndexOf(term);
        JsonElement theirs = s_file.Made.GetProperty("camera").GetProperty(term);
        double deviation = theirs.GetProperty("standardDeviation").GetDouble();
        double ours = s_ours.Value.StandardUncertainties[i];

        Assert.InRange(s_ours.Value.Values[i], theirs.GetProperty("value").GetDouble() - (2 * Both()), theirs.GetProperty("value").GetDouble() + (2 * Both()));
        // Ours must not be the looser one, or agreement would say nothing of it: whole edges tell more than their ends.
        Assert.InRange(ours, 0, deviation);

        double Both() => Math.Sqrt((deviation * deviation) + (ours * ours));
    }

    [Fact]
    public void The_print_is_found_as_it_was_drawn_so_that_neither_stretch_nor_bend_lies_between_the_two()
    {
        CalibratedCamera ours = s_ours.Value;

        Assert.All(Enumerable.Range(9, 4), i => Assert.InRange(Math.Abs(ours.Values[i]), 0, 3 * ours.StandardUncertainties[i]));
        Assert.InRange(ours.Board.Spread - s_file.Made.GetProperty("spreadMm").GetDouble(), -0.005, 0.005);
        Assert.Equal(s_file.Photos.Count, ours.Views.Count);
    }

    [Theory]
    [MemberData(nameof(Photos))]
    public void Corners_lie_where_our_calibration_puts_them_to_six_hundredths_of_a_pixel(string photo)
    {
        CalibratedCamera ours = s_ours.Value;
        JsonElement values = s_file.Photos.Single(p => p.Photo == photo).Values;
        CalibratedView view = ours.Views.Single(v => v.Name == photo);
        List<PixelVector> differences = [];
        foreach (JsonProperty seen in values.GetProperty("markers").EnumerateObject())
        {
            CardMarker marker = CalibrationBoard.Sheet.Markers.Single(m => m.Id.ToString(CultureInfo.InvariantCulture) == seen.Name);
            JsonElement[] found = [.. seen.Value.EnumerateArray()];
            Assert.Equal(4, found.Length);
            differences.AddRange(marker.Corners.Zip(found, (c, f) =>
                new PixelPoint(f[0].GetDouble(), f[1].GetDouble()) - Place(c, new(Math.Sign(c.U - marker.Centre.U), Math.Sign(c.V - marker.Centre.V)))));
        }

        Assert.True(differences.Count >= 60, $"only {differences.Count} corners");
        Assert.InRange(Math.Sqrt(differences.Average(d => (d.X * d.X) + (d.Y * d.Y))), 0, 0.06);
        Assert.InRange(differences.Average(d => d.X), -0.02, 0.02);
        Assert.InRange(differences.Average(d => d.Y), -0.02, 0.02);

        PixelPoint Place(CardPoint corner, CardVector outwards)
        {
            (double x, double y, double z) = ours.Board.InSpace(corner, outwards);
            (double rx, double ry, double rz) = view.Pose.Turned(x, y, z);
            (double tx, double ty, double tz) = view.Pose.Origin;
            return ours.Camera.ToPhoto((rx + tx) / (rz + tz), (ry + ty) / (rz + tz));
        }
    }
}
