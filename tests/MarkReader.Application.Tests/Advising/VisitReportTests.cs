using System.Text.Json;

namespace MarkReader.Application.Tests.Advising;

/// <summary>The answer as other programs read it.</summary>
public sealed class VisitReportTests
{
    private const string Near = """{ "kind": "mark", "leg": "1", "path": 80, "u": 0.4, "v": 0.2, "uncertainty": 0.05 }""";
    private const string Far = """{ "kind": "mark", "leg": "1", "path": 480, "u": 2.4, "v": 1.4, "uncertainty": 0.05 }""";

    [Fact]
    public void The_first_action_is_a_pulse_at_the_near_station_with_its_fields_alone()
    {
        JsonElement answer = VisitTexts.Answer(VisitTexts.Visit(VisitTexts.Machine));
        Assert.Equal(["kind", "leg", "path"], answer.GetProperty("action").EnumerateObject().Select(p => p.Name));
        Assert.Equal(("fire", "1", 80), (Text(answer, "kind"), Text(answer, "leg"), answer.GetProperty("action").GetProperty("path").GetDouble()));
        Assert.NotEmpty(answer.GetProperty("reason").GetString()!);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("expected").ValueKind);
        Assert.Equal(["1", "2", "survey", "centring", "machine"], answer.GetProperty("state").EnumerateObject().Select(p => p.Name));
    }

    [Fact]
    public void Two_marks_give_slope_aim_a_turn_and_the_next_mark_for_each_sense()
    {
        JsonElement answer = VisitTexts.Answer(VisitTexts.Visit(VisitTexts.Machine, Near, Far));
        Assert.Equal("turn", Text(answer, "kind"));
        Assert.Equal("1", Text(answer, "leg"));
        Assert.Matches("^[AB]$", Text(answer, "screw"));
        Assert.NotEqual(0, answer.GetProperty("action").GetProperty("turns").GetDouble());
        JsonElement leg = answer.GetProperty("state").GetProperty("1");
        Assert.Equal("outside", leg.GetProperty("verdict").GetString());
        // 2 mm on tape at 45 degrees over 400 mm of rail and 1.4 mm more of path; v 1.2 mm over the same.
        Assert.Equal(3.53, leg.GetProperty("slope").GetProperty("u").GetDouble(), 0.03);
        Assert.Equal(2.99, leg.GetProperty("slope").GetProperty("v").GetDouble(), 0.03);
        Assert.Equal(0, leg.GetProperty("aim").GetProperty("u").GetDouble(), 0.05);
        Assert.Equal(2, leg.GetProperty("aim").GetProperty("covariance").GetArrayLength());
        // Two ways for the one screw that is turned.
        Assert.Equal(2, answer.GetProperty("expected").GetProperty("branches").GetArrayLength());
    }

    private static string? Text(JsonElement answer, string name) => answer.GetProperty("action").GetProperty(name).GetString();
}
