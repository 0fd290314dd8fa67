using System.Text;
using MarkReader.Application.Advising;
using MarkReader.Application.Machines;
using MarkReader.Application.Tests.Advising;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Machines;

public sealed class MachineFileTests
{
    private const string Legs = """[ { "name": "2", "nearPath": 60, "farPath": 560 } ]""";

    [Fact]
    public void A_machine_of_a_visit_file_is_read_and_its_text_kept_as_it_was()
    {
        MachineDocument document = Read(VisitTexts.Machine).ValueOrThrow();
        Assert.Equal(VisitTexts.Machine, document.Text);
        Assert.Equal(["1", "2"], document.Setup.Legs.Select(l => l.Name));
        Assert.Null(document.Name);
        Assert.Empty(document.Warnings);
    }

    [Fact]
    public void A_name_is_read_and_an_unknown_field_told()
    {
        MachineDocument document = Read($$"""{ "name": "the one by the door", "colour": "grey", "legs": {{Legs}} }""").ValueOrThrow();
        Assert.Equal("the one by the door", document.Name);
        Warning warning = Assert.Single(document.Warnings);
        Assert.Equal("fieldIgnored", warning.Code);
        Assert.Contains("'colour'", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_byte_order_mark_is_not_kept() =>
        Assert.Equal(VisitTexts.Machine, MachineFile.Read((byte[])[0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(VisitTexts.Machine)]).ValueOrThrow().Text);

    [Fact]
    public void What_is_kept_can_stand_in_a_visit_file()
    {
        // As deep as a document may be: the visit file round it adds a level.
        string deep = $$"""{ "legs": {{Legs}}, "note": {{new string('[', 14)}}{{new string(']', 14)}} }""";
        Assert.Equal(deep, Read(deep).ValueOrThrow().Text);
        Assert.True(VisitTexts.Advise(VisitTexts.Visit(deep)).TryGet(out _, out _));
        Assert.False(Read(deep.Replace("[[", "[[[", StringComparison.Ordinal).Replace("]]", "]]]", StringComparison.Ordinal)).TryGet(out _, out Failure? failure));
        Assert.Equal(MachineFailures.Unreadable, failure.Code);
    }

    public static TheoryData<string, string, string> Hostile => new()
    {
        { "MACHINE_UNREADABLE", "", "not JSON" },
        { "MACHINE_UNREADABLE", VisitTexts.Machine + "{}", "not JSON" },
        { "MACHINE_UNREADABLE", VisitTexts.Machine + "// and so on", "not JSON" },
        { "MACHINE_UNREADABLE", "null", "not an object" },
        { "MACHINE_UNREADABLE", VisitTexts.Visit(VisitTexts.Machine), "'legs'" },
        { "MACHINE_UNREADABLE", $$"""{ "name": "\ud800", "legs": {{Legs}} }""", "not Unicode" },
        { "MACHINE_UNREADABLE", $$"""{ "\udc00": 1, "legs": {{Legs}} }""", "not Unicode" },
        { "MACHINE_UNREADABLE", $$"""{ "name": [], "legs": {{Legs}} }""", "'name'" },
        { "MACHINE_UNREADABLE", """{ "legs": [ { "name": "1", "nearPath": 1e999, "farPath": 480 } ] }""", "'nearPath'" },
        { "MACHINE_NAME_INVALID", $$"""{ "name": " ", "legs": {{Legs}} }""", "name" },
        { "MACHINE_NAME_INVALID", $$"""{ "name": "a\u0000b", "legs": {{Legs}} }""", "name" },
        { "MACHINE_NAME_INVALID", $$"""{ "name": "{{new string('x', 81)}}", "legs": {{Legs}} }""", "name" },
        { "VISIT_LEGS_INVALID", """{ "legs": [] }""", "legs" },
        { "PATHS_SWAPPED", """{ "legs": [ { "name": "1", "nearPath": 480, "farPath": 80 } ] }""", "leg 1" },
        { "MACHINE_TOO_LARGE", $$"""{ "legs": {{Legs}}, "name": "{{new string('x', 70000)}}" }""", "64 KB" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void What_no_visit_could_begin_with_is_refused(string code, string text, string says)
    {
        Assert.False(Read(text).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
        Assert.Contains(says, failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_refused()
    {
        byte[] bytes = Encoding.UTF8.GetBytes($$"""{ "name": "?", "legs": {{Legs}} }""");
        bytes[Array.IndexOf(bytes, (byte)'?')] = 0xFF;
        Assert.False(MachineFile.Read(bytes).TryGet(out _, out Failure? failure));
        Assert.Contains("not Unicode", failure.Message, StringComparison.Ordinal);
        Assert.False(VisitFile.Read((byte[])[.. "{\"machine\": "u8, .. bytes, .. "}"u8]).TryGet(out _, out failure));
        Assert.Contains("not Unicode", failure.Message, StringComparison.Ordinal);
    }

    private static Outcome<MachineDocument> Read(string text) => MachineFile.Read(Encoding.UTF8.GetBytes(text));
}
