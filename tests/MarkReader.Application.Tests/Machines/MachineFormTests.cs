using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using MarkReader.Application.Inputs;
using MarkReader.Application.Machines;
using MarkReader.Application.Machines.Form;
using MarkReader.Application.Tests.Advising;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Machines;

/// <summary>A form that comes back as it was sent changes nothing; one field changed changes one field.</summary>
public sealed class MachineFormTests
{
    /// <summary>Fields that no form shows, odd order, nulls, numbers with more digits than are shown.</summary>
    private const string Odd = """
        { "colour": {"door": "grey"}, "washers": [0.512345, {"count": 3, "thickness": 0.8, "from": "the drawer"}, 1.0], "aperture": null,
          "legs": [
            { "frame": { "screws": [ {"name": "top", "at": "upperLeft", "knob": "red"}, {"at": "upperRight", "name": "2"}, {"name": "C", "at": "lowerLeft"} ],
                "pitch": 0.33333333333, "arm": 27.123456789, "faceDistance": 4, "fold": "left", "backlashDegrees": 7,
                "response": [ {"screw": "2", "u": 1.234567, "v": 0.01, "uncertainty": 0.1, "senseProbability": 0.99} ] },
              "nearPath": 81.123456789, "farPath": 481.98765432, "name": 2, "pathUncertainty": 1.2345678, "incidenceDegrees": 12.5 },
            { "name": "1", "nearPath": 80, "farPath": 480.0, "frame": {"thread": " m4 X 0.5"} } ],
          "bed": {"y": 400.123456, "x": 500, "tolerance": 5e-1, "note": []}, "name": "the one by the door" }
        """;

    private static readonly LengthTexts s_inches = new(
        "in",
        mm => (mm / 25.4).ToString("0.###", CultureInfo.InvariantCulture).Replace('.', ','),
        text => NumberText.Read(text.Replace(',', '.')).TryGet(out Number? number, out Failure? failure) ? new Number(25.4 * number.Value) : failure);

    public static TheoryData<string> Documents => [.. MachinePresets.All.Select(p => p.Text), Odd, VisitTexts.Machine, $$"""{ "legs": {{VisitTexts.Legs}}, "bed": null }"""];

    [Theory]
    [MemberData(nameof(Documents))]
    public void Nothing_changed_gives_the_same_document(string document)
    {
        Assert.Equal(document, Document(Sent(document, s_inches), document).Text);
        Assert.Equal(document, Document(Sent(document, LengthTexts.Millimetres), document).Text);
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void One_length_changed_changes_that_number_alone(string document)
    {
        Random random = new(5);
        for (int i = 0; i < 20; i++)
        {
            string text = s_inches.Write(20 + (40 * random.NextDouble()));
            JsonNode expected = JsonNode.Parse(document)!;
            JsonObject leg = expected["legs"]!.AsArray().Select(l => l!.AsObject()).Single(l => l["name"]!.ToString() == "1");
            leg["nearPath"] = Math.Round(s_inches.Read(text).ValueOrThrow().Value, 6);
            string changed = Document(Sent(document, s_inches, ("leg1-nearPath", text)), document).Text;
            Assert.True(JsonNode.DeepEquals(expected, JsonNode.Parse(changed)), changed);
        }
    }

    [Fact]
    public void A_travel_gives_the_far_path()
    {
        Assert.Equal(330, Leg(Document(Sent(Small, LengthTexts.Millimetres, ("leg1-travel", "250")), Small), 0).GetProperty("farPath").GetDouble());
        Assert.Equal(342.5, Leg(Document(Sent(Small, LengthTexts.Millimetres, ("leg1-nearPath", "92,5"), ("leg1-travel", "250")), Small), 0).GetProperty("farPath").GetDouble());
        Assert.Contains("not this travel", Wrong("leg1-travel", ("leg1-farPath", "480"), ("leg1-travel", "250")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Screws_that_change_their_corner_keep_what_else_is_said_of_them()
    {
        JsonElement frame = Leg(Document(Sent(Odd, s_inches, ("leg2-upperLeft", ""), ("leg2-lowerRight", "screw top"), ("leg2-lowerLeft", "pivot")), Odd), 0).GetProperty("frame");
        Assert.Equal("""[{"name":"top","at":"lowerRight","knob":"red"},{"at":"upperRight","name":"2"}]""", JsonSerializer.Serialize(frame.GetProperty("screws")));
        Assert.Equal("lowerLeft", frame.GetProperty("pivot").GetString());
        Assert.Equal(4, frame.GetProperty("faceDistance").GetInt32());
    }

    [Fact]
    public void A_thread_takes_the_place_of_a_pitch_and_back()
    {
        JsonElement frame = Leg(Document(Sent(Odd, s_inches, ("leg2-thread", "#8-32")), Odd), 0).GetProperty("frame");
        Assert.Equal("#8-32", frame.GetProperty("thread").GetString());
        Assert.False(frame.TryGetProperty("pitch", out _));
        frame = Leg(Document(Sent(Small, LengthTexts.Millimetres, ("leg1-thread", "own"), ("leg1-pitch", "0,6")), Small), 0).GetProperty("frame");
        Assert.Equal(0.6, frame.GetProperty("pitch").GetDouble());
        Assert.False(frame.TryGetProperty("thread", out _));
    }

    [Fact]
    public void Washers_are_added_without_touching_those_before()
    {
        JsonElement washers = Root(Document(Sent(Odd, s_inches, ("washers", "0,02; 0,031 x3; 0,1 x2; 0,02 x1")), Odd)).GetProperty("washers");
        Assert.Equal("""[0.512345,{"count":3,"thickness":0.8,"from":"the drawer"},{"thickness":2.54,"count":2},{"thickness":0.508,"count":1}]""", JsonSerializer.Serialize(washers));
    }

    [Fact]
    public void A_third_leg_comes_behind_and_parts_can_be_left_out()
    {
        MachineDocument document = Document(
            Sent(Small, LengthTexts.Millimetres, ("leg3", "on"), ("leg3-nearPath", "60"), ("leg3-travel", "90"), ("aperture", ""), ("bed", "")), Small);
        Assert.Equal(["1", "2", "3"], document.Setup.Legs.Select(l => l.Name));
        Assert.Equal(150, document.Setup.Legs[2].Setup.Far.Path.Millimetres);
        Assert.Null(document.Setup.Bed);
        Assert.Null(document.Setup.Aperture);
    }

    [Fact]
    public void A_new_machine_asks_for_all_that_must_be_measured()
    {
        IReadOnlyDictionary<string, Failure> wrong = Sent(MachineForm.Blank, LengthTexts.Millimetres).Apply(MachineForm.Blank).Wrong;
        Assert.Equal(["bed-x", "bed-y", "leg1-farPath", "leg1-nearPath", "leg2-farPath", "leg2-nearPath"], wrong.Keys.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("leg1-nearPath", "leg1-nearPath", "eighty", "not a number")]
    [InlineData("leg1-nearPath", "leg1-nearPath", "", "missing")]
    [InlineData("leg1-nearPath", "leg1-nearPath", "nan", "near path")]
    [InlineData("leg1-farPath", "leg1-farPath", "40", "swapped")]
    [InlineData("leg1-pathUncertainty", "leg1-pathUncertainty", "7", "none of those offered")]
    [InlineData("leg1-pathUncertainty", "leg1-pathUncertainty-own", "own", "missing")]
    [InlineData("leg1-upperRight", "leg1-frame", "pivot", "2 pivots")]
    [InlineData("leg1-upperLeft", "leg1-frame", "screw A", "same name")]
    [InlineData("leg1-lowerLeft", "leg1-frame", "", "no pivot")]
    [InlineData("leg1-arm", "leg1-arm", "1", "arm")]
    [InlineData("leg1-thread", "leg1-thread", "M7", "no thread")]
    [InlineData("leg2", "bed", "", "no leg 2")]
    [InlineData("bed", "aperture", "", "no bed")]
    [InlineData("aperture-tolerance", "form", "50", "outside its 'diameter'")]
    [InlineData("washers", "washers", "0.5; thick", "not a number")]
    [InlineData("washers", "washers", "0.8x", "count")]
    [InlineData("washers", "washers", "-1", "thick")]
    [InlineData("name", "name", "a\u0001b", "name")]
    public void What_is_wrong_stands_beside_its_field(string changed, string field, string text, string says) =>
        Assert.Contains(says, Wrong(field, (changed, text)).Message, StringComparison.Ordinal);

    private static string Small => MachinePresets.All[0].Text;

    private static Failure Wrong(string field, params (string Field, string Text)[] changes)
    {
        IReadOnlyDictionary<string, Failure> wrong = Sent(Small, LengthTexts.Millimetres, changes).Apply(Small).Wrong;
        Assert.Equal([field], wrong.Keys);
        return wrong[field];
    }

    /// <summary>The document's form as a browser sends it back, with some fields changed.</summary>
    private static MachineForm Sent(string document, LengthTexts lengths, params (string Field, string Text)[] changes)
    {
        MachineForm form = MachineForm.Of(document, lengths);
        return MachineForm.Sent(field => changes.Any(c => c.Field == field) ? changes.First(c => c.Field == field).Text : form[field], lengths);
    }

    private static MachineDocument Document(MachineForm form, string basis)
    {
        _ = MachineFile.Read(Encoding.UTF8.GetBytes(basis)).ValueOrThrow();
        (MachineDocument? document, IReadOnlyDictionary<string, Failure> wrong) = form.Apply(basis);
        Assert.Empty(wrong);
        return document!;
    }

    private static JsonElement Root(MachineDocument document) => JsonDocument.Parse(document.Text).RootElement;

    private static JsonElement Leg(MachineDocument document, int at) => Root(document).GetProperty("legs")[at];
}
