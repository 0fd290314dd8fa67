using MarkReader.Alignment.Survey;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>A survey as a table of text (<see cref="TextTable"/>) with the columns x, y, u, v and uncertainty.</summary>
internal static class SurveyTable
{
    private static readonly string[] s_columns = ["x", "y", "u", "v", "uncertainty"];

    public static Outcome<SurveyMarks> Read(string text)
    {
        if (!TextTable.Read(text, SurveyInputFailures.FileUnreadable, s_columns).TryGet(out TextTable? table, out Failure? failure))
            return failure;
        List<SurveyMark> marks = [];
        foreach (TextTable.Row row in table.Rows)
        {
            double[] numbers = new double[s_columns.Length];
            for (int i = 0; i < numbers.Length; i++)
            {
                if (!table.Number(row, s_columns[i]).TryGet(out Number? number, out failure))
                    return failure;
                numbers[i] = number.Value;
            }

            if (!SurveyFile.Mark(row.Name, numbers).TryGet(out SurveyMark? mark, out failure))
                return failure;
            marks.Add(mark);
        }

        return new SurveyMarks(marks);
    }
}
