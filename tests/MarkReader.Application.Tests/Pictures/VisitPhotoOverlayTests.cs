using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Pictures;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Advising;
using MarkReader.Application.Tests.Support;
using MarkReader.Drawing.Overlays;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Pictures;

public sealed class VisitPhotoOverlayTests
{
    private static readonly PhotoMeasurement s_measured =
        PhotoMeasurer.Measure(LegScene.Photo(3, (2.4, 1.4)), new() { Rulers = null, Tape = new(Length.FromMillimetres(0.3), Length.FromMillimetres(0.1)) }).ValueOrThrow();

    private static readonly string s_json = ReportJson.Write(MeasureReport.From(s_measured));

    [Fact]
    public void The_projection_that_is_kept_is_the_one_that_was_measured()
    {
        OverlayScene scene = Scene(s_json)!;
        for (int i = 0; i < 25; i++)
        {
            CardPoint point = new((6 * (i % 5)) - 12, (6 * (i / 5)) - 12);
            PixelPoint image = s_measured.Projection.ToPhoto(point);
            Assert.Equal(0, image.DistanceTo(scene.Projection.ToPhoto(point)), 1e-6);
            Assert.Equal(0, point.DistanceTo(scene.Projection.ToCard(image)), 1e-6);
        }

        Assert.Equal(s_measured.Card.ZoneSide, scene.ZoneSide);
    }

    [Fact]
    public void Aim_marks_and_arrow_lie_where_the_card_is_in_the_photo()
    {
        (VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice advice) = Visit();
        KeptOverlay overlay = VisitPhotoOverlay.Of(Kept(s_json), setup, events, advice, "1")!;
        CardPoint aim = advice.State.Legs["1"].State.Aim!.Point;
        PixelPoint expected = s_measured.Projection.ToPhoto(aim);
        foreach (string svg in new[] { overlay.Photo, overlay.Crop })
        {
            Assert.Equal(0, Middle(svg, "aim-region").DistanceTo(expected), 0.5);
            Assert.Equal(0, Middle(svg, "far").DistanceTo(s_measured.Projection.ToPhoto(s_measured.Marks[0].Centre.Point)), 0.5);
            Assert.Contains(XElement.Parse(svg).Descendants(), e => e.Attribute("data-part")?.Value == "way");
            string[] words = [.. XElement.Parse(svg).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
            Assert.All(["1 near", "2 far", "aim"], w => Assert.Contains(w, words));
            Assert.Contains(words, w => w.EndsWith("mm to go", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Over_a_measurement_of_an_earlier_version_and_over_a_refusal_nothing_is_drawn()
    {
        JsonNode older = JsonNode.Parse(s_json)!;
        Assert.True(older.AsObject().Remove("projection"));
        Assert.Null(Scene(older.ToJsonString()));
        JsonNode other = JsonNode.Parse(s_json)!;
        other["projection"]!["camera"]!["view"]!.AsArray().RemoveAt(0);
        Assert.Null(Scene(other.ToJsonString()));
        (VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice advice) = Visit();
        KeptMeasurement refused = new(new KeptAnswer.Refusal(new(new("CARD_NOT_FOUND", FailureKind.NotMeasurable), "no card", "try again")), "1", default);
        Assert.Null(VisitPhotoOverlay.Of(refused, setup, events, advice, "1"));
        Assert.Null(VisitPhotoOverlay.Of(Kept(s_json), setup, events, advice, "3"));
    }

    private static OverlayScene? Scene(string json)
    {
        (VisitSetup setup, IReadOnlyList<VisitEvent> events, VisitAdvice advice) = Visit();
        return VisitPhotoOverlay.Scene(Kept(json), setup, events, advice, "1");
    }

    private static KeptMeasurement Kept(string json) => new(new KeptAnswer.Report(json), "1", default);

    // The far mark is the photo's, the near one was made on the same tape.
    private static (VisitSetup Setup, IReadOnlyList<VisitEvent> Events, VisitAdvice Advice) Visit()
    {
        CardPoint far = s_measured.Marks[0].Centre.Point;
        string[] events =
        [
            """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""",
            FormattableString.Invariant($$"""{ "kind": "mark", "leg": "1", "path": 480, "u": {{far.U}}, "v": {{far.V}}, "uncertainty": 0.05 }"""),
        ];
        Visit visit = VisitFile.Read(Encoding.UTF8.GetBytes(VisitTexts.Visit(VisitTexts.Machine, events))).ValueOrThrow();
        return (visit.Setup, visit.Events, VisitAdviser.Advise(visit.Setup, visit.Events).ValueOrThrow());
    }

    // The middle of the first outline of a part; perspective moves that of an ellipse by much less than half a pixel.
    private static PixelPoint Middle(string svg, string part)
    {
        string data = XElement.Parse(svg).Descendants().First(e => e.Attribute("data-part")?.Value == part).Attribute("d")!.Value;
        PixelPoint[] points = [.. data.Trim('M', 'Z').Split('L').Select(p => p.Split(' ')).Select(p => new PixelPoint(Number(p[0]), Number(p[1])))];
        return new(points.Average(p => p.X), points.Average(p => p.Y));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
