using System.Text;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>The marks of a corner survey.</summary>
public sealed record SurveyMarks(IReadOnlyList<SurveyMark> Marks);

/// <summary>Reads a survey's marks, from a table (<see cref="SurveyTable"/>) or from JSON (<see cref="SurveyJson"/>).</summary>
public static class SurveyFile
{
    /// <summary>Largest file, bytes; the most marks of a survey need far less.</summary>
    public const int MostBytes = 1 << 20;

    private const double LeastUncertainty = 0.001, MostUncertainty = 10;

    public static Outcome<SurveyMarks> Read(ReadOnlyMemory<byte> bytes)
    {
        // The byte order mark that spreadsheets write tells the encoding.
        using StreamReader reader = new(new MemoryStream(bytes.ToArray()), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        string text = reader.ReadToEnd();
        if (string.IsNullOrWhiteSpace(text))
            return Empty();
        Outcome<SurveyMarks> read = text.TrimStart()[0] is '[' or '{' ? SurveyJson.Read(text) : SurveyTable.Read(text);
        return read.TryGet(out SurveyMarks? marks, out _) && marks.Marks.Count == 0 ? Empty() : read;
    }

    /// <param name="where">Which mark it is, as messages call it.</param>
    /// <param name="numbers">x, y, u, v and the standard uncertainty, mm.</param>
    internal static Outcome<SurveyMark> Mark(string where, double[] numbers)
    {
        if (!numbers.All(double.IsFinite))
            return Unreadable(InputTexts.Say("surveyFile.hasNumberThatNotFinite", where), InputTexts.Get("surveyFile.giveXYUV"));
        (double uncertainty, string what) = (numbers[4], InputTexts.Say("surveyFile.standardUncertaintyInMm", where));
        if (InputChecks.Between(uncertainty, (LeastUncertainty, MostUncertainty), SurveyFailures.MarkInvalid, what, InputTexts.Get("surveyFile.giveEveryMarkStandardUncertainty")) is { } wrong)
            return wrong;
        return new SurveyMark(
            Length.FromMillimetres(numbers[0]), Length.FromMillimetres(numbers[1]), new(new(numbers[2], numbers[3]), Covariance2.Isotropic(uncertainty)));
    }

    internal static Failure Unreadable(string reason, string hint) => new(SurveyInputFailures.FileUnreadable, reason, hint);

    private static Failure Empty() => new(
        SurveyInputFailures.FileEmpty, InputTexts.Get("surveyFile.fileHasNoMarks"), InputTexts.Get("surveyFile.beginWithLineXY"));
}
