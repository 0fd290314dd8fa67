using System.Globalization;
using MarkReader.Application.Records;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>How studies write numbers: lengths without their unit, whose name stands in the sentence or above the column.</summary>
internal sealed class StudyNumbers(RecordFormat? format)
{
    private readonly RecordFormat _format = format ?? RecordFormat.Plain;

    public string Unit => _format.UnitName;

    /// <summary>A standard deviation of readings, to 0.1 µm.</summary>
    public string Fine(double mm) => _format.Length(mm, 4);

    /// <summary>The same for a narrow column; of inches one decimal less.</summary>
    public string Cell(double mm) => _format.Unit == RecordUnit.Inch ? Scatter(mm) : Fine(mm);

    /// <summary>The scatter of pulses, to 1 µm.</summary>
    public string Scatter(double mm) => _format.Length(mm, 3);

    public string Short(double mm) => _format.Short(mm).Split('\u00a0')[0];

    /// <summary>Of a number that is no length, as few decimals as it needs, three at most.</summary>
    public string Plain(double value) => Signs(value.ToString("0.###", CultureInfo.InvariantCulture));

    public string Number(double value, int decimals) => _format.Number(value, decimals);

    public string Percent(double percent) => Signs(StudyWords.Percent(percent));

    public string P(double p) => Signs(StudyWords.P(p));

    /// <summary>Of an upper bound.</summary>
    public string PAtMost(double p) => p < 0.0001 ? StudyTexts.Say("studyNumbers.pBelow", Signs("0.0001")) : StudyTexts.Say("studyNumbers.pAtMost", P(p));

    public string Said(Wording words) => words.In(l => _format.Length(l.Millimetres, 1) + (l.HasUnit ? " " + Unit : ""), Unit, _format.HasComma ? ';' : ',', Signs);

    /// <summary>With lengths that are limits, in as few decimals as they need.</summary>
    public string SaidLimits(Wording words) => words.In(l => Short(l.Millimetres) + " " + Unit, Unit, number: Signs);

    /// <summary>A text of numbers that were written with a point.</summary>
    public string Signs(string text) => _format.HasComma ? text.Replace('.', ',') : text;

    public PictureStyle Style(Func<double, string> length) =>
        PictureStyle.Default with { Numbers = RecordPictures.Numbers(_format) with { Fine = l => length(l.Millimetres) + "\u00a0" + Unit, Round = Step } };

    // Steps of a scale may be as small as the scatter itself.
    private string Step(Length length) =>
        Signs((length.Millimetres / (_format.Unit == RecordUnit.Inch ? Length.MillimetresPerInch : 1)).ToString("0.######", CultureInfo.InvariantCulture)) + "\u00a0" + Unit;
}
