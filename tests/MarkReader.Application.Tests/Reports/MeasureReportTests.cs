using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Application.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Reports;

public sealed class MeasureReportTests
{
    [Fact]
    public void Json_is_that_of_the_contract_with_marks_sorted_by_u()
    {
        var photo = Some.Photo(Some.Mark(3, 1), Some.Mark(-2, 4)) with { Warnings = [new("steep", "Hold it \"squarely\".")] };
        string json = ReportJson.Write(MeasureReport.From(photo with { Marks = [.. photo.Marks.Reverse()] }));
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement root = document.RootElement;
        Assert.Equal(["photo", "card", "marks", "warnings", "quality", "doubtful", "projection"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal(["width", "height", "cameraProfile"], root.GetProperty("photo").EnumerateObject().Select(p => p.Name));
        Assert.Equal(["kind", "markersSeen", "pixelsPerMm", "tiltDegrees", "residualPx"], root.GetProperty("card").EnumerateObject().Select(p => p.Name));
        JsonElement marks = root.GetProperty("marks");
        Assert.Equal([-2.0, 3.0], marks.EnumerateArray().Select(m => m.GetProperty("u").GetDouble()));
        Assert.Equal(["u", "v", "covariance", "diameter", "x", "y", "budget"], marks[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal(1e-4, marks[0].GetProperty("covariance")[1][1].GetDouble(), 1e-12);
        Assert.Equal(500 - (16 * 2), marks[0].GetProperty("x").GetDouble(), 1e-9);
        Assert.Equal("Hold it \"squarely\".", root.GetProperty("warnings")[0].GetProperty("message").GetString());
    }

    [Fact]
    public void A_refusal_is_an_error_object()
    {
        string json = ReportJson.Write(ErrorReport.From(new(new("NO_MARK", FailureKind.NotMeasurable), "no mark", "fire")));
        using JsonDocument document = JsonDocument.Parse(json);
        JsonElement error = document.RootElement.GetProperty("error");
        Assert.Equal(
            [("code", "NO_MARK"), ("message", "no mark"), ("hint", "fire")],
            error.EnumerateObject().Select(p => (p.Name, p.Value.GetString()!)));
    }
}
