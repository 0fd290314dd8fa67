using System.Text;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Survey;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Survey;

public sealed class SurveyFileTests
{
    public static TheoryData<string> Readable =>
    [
        "x,y,u,v,uncertainty\n0,0,0.1,-0.2,0.05\n500,400,1.125,0.6,0.1\n",
        "x, y, u, v, uncertainty\r\n\r\n0, 0, 0.1, -0.2, 0.05\r\n500, 400, 1.125, 0.6, 0.1",
        "X/mm;Y/mm;U/mm;V/mm;Uncertainty/mm\n0;0;0,1;-0,2;0,05\n500;400;1,125;0,6;0,1\n;;;;\n",
        "corner;uncertainty;v;u;y;x\nnear left;0.05;-0.2;0.1;0;0\nfar right;0.1;0.6;1.125;400;500",
        "x\ty\tu\tv\tuncertainty\n0\t0\t0,1\t−0,2\t0,05\n500\t400\t1,125\t0,6\t0,1",
        "\"x\",\"y\",\"u\",\"v\",\"uncertainty\"\n\"0\",\"0\",\"0.1\",\"-0.2\",\"0.05\"\n500,400,1.125,0.6,0.1",
        """[{"kind": "survey", "x": 0, "y": 0, "u": 0.1, "v": -0.2, "uncertainty": 0.05}, {"x": 500, "y": 400, "u": 1.125, "v": 0.6, "uncertainty": 0.1, "note": "second"}]""",
    ];

    [Theory]
    [MemberData(nameof(Readable))]
    public void Marks_are_read_from_tables_and_json(string text)
    {
        foreach (Encoding encoding in (Encoding[])[new UTF8Encoding(false), new UTF8Encoding(true), Encoding.Unicode])
        {
            SurveyMark[] marks = [.. SurveyFile.Read((byte[])[.. encoding.Preamble, .. encoding.GetBytes(text)]).ValueOrThrow().Marks];
            Assert.Equal(2, marks.Length);
            Assert.Equal((0, 0), (marks[0].X.Millimetres, marks[0].Y.Millimetres));
            Assert.Equal(new CardPoint(0.1, -0.2), marks[0].Mark.Point);
            Assert.Equal((500, 400), (marks[1].X.Millimetres, marks[1].Y.Millimetres));
            Assert.Equal(new CardPoint(1.125, 0.6), marks[1].Mark.Point);
            Assert.Equal(Covariance2.Isotropic(0.1), marks[1].Mark.Covariance);
        }
    }

    [Theory]
    [InlineData("SURVEY_FILE_EMPTY", "")]
    [InlineData("SURVEY_FILE_EMPTY", " \n;;\n")]
    [InlineData("SURVEY_FILE_EMPTY", ",,,\n")]
    [InlineData("SURVEY_FILE_EMPTY", "x,y,u,v,uncertainty\n")]
    [InlineData("SURVEY_FILE_EMPTY", "[]")]
    [InlineData("SURVEY_FILE_UNREADABLE", "0,0,0.1,0.2,0.05\n")]
    [InlineData("SURVEY_FILE_UNREADABLE", "x,y,u,v\n0,0,0.1,0.2\n")]
    [InlineData("SURVEY_FILE_UNREADABLE", "x,y,u,v,uncertainty\n0,0,0,1,0,2,0,05\n")]
    [InlineData("SURVEY_FILE_UNREADABLE", "x,y,u,v,uncertainty\n0,0,0.1,high,0.05\n")]
    [InlineData("SURVEY_FILE_UNREADABLE", "x,y,u,v,uncertainty\n0,0,0.1,nan,0.05\n")]
    [InlineData("SURVEY_FILE_UNREADABLE", "x,y,u,v,uncertainty\n0,0,0.1\n")]
    [InlineData("SURVEY_FILE_UNREADABLE", "[1]")]
    [InlineData("SURVEY_FILE_UNREADABLE", "[{\"x\": 0,")]
    [InlineData("SURVEY_FILE_UNREADABLE", "{\"events\": []}")]
    [InlineData("SURVEY_FILE_UNREADABLE", "[{\"kind\": \"survey\", \"x\": 0, \"y\": 0, \"u\": 1, \"v\": \"2\", \"uncertainty\": 0.05}]")]
    [InlineData("SURVEY_FILE_UNREADABLE", "[{\"kind\": \"survey\", \"x\": 1e999, \"y\": 0, \"u\": 1, \"v\": 2, \"uncertainty\": 0.05}]")]
    [InlineData("SURVEY_FILE_UNREADABLE", "[{\"kind\": \"shim\", \"corner\": \"farRight\", \"height\": 0.8}]")]
    [InlineData("SURVEY_MARK_INVALID", "x,y,u,v,uncertainty\n0,0,0.1,0.2,0\n")]
    [InlineData("SURVEY_MARK_INVALID", "x,y,u,v,uncertainty\n0,0,0.1,0.2,1e200\n")]
    public void What_is_no_survey_is_refused(string code, string text)
    {
        Assert.False(SurveyFile.Read(Encoding.UTF8.GetBytes(text)).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    [Fact]
    public void A_wrong_line_is_named_by_its_number()
    {
        Assert.False(SurveyFile.Read("x,y,u,v,uncertainty\n\n0,0,0,0,0.05\n500,0,0,O.1,0.05\n"u8.ToArray()).TryGet(out _, out Failure? failure));
        Assert.StartsWith("line 4: v 'O.1'", failure.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("500,400")]
    [InlineData(" 500, 400 ")]
    [InlineData("500 400")]
    [InlineData("500;400.0")]
    public void Travels_are_two_numbers(string text) => Assert.Equal(new Travels(500, 400), TravelsText.Read(text).ValueOrThrow());

    [Theory]
    [InlineData("500")]
    [InlineData("500,400,300")]
    [InlineData("nan,400")]
    [InlineData("500,0;400,0")]
    public void Other_travels_are_refused(string text)
    {
        Assert.False(TravelsText.Read(text).TryGet(out _, out Failure? failure));
        Assert.Equal("BED_UNREADABLE", failure.Code.Name);
    }
}
