using System.Text;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Reads tables of readings, in mm.</summary>
public static class ReadingsFile
{
    /// <summary>Largest file, bytes.</summary>
    public const int MostBytes = 2 << 20;

    private const int LongestName = 60;
    private const double Farthest = 10_000, MostUncertainty = 10;

    private static readonly string[] s_place = ["u", "v"], s_study = ["part", "operator", "repeat", .. s_place];

    /// <summary>A study: the columns part, operator, repeat, u, v and perhaps uncertainty (standard uncertainty of either component).</summary>
    /// <param name="photos">Whether rows with the same operator and repeat were read in one photo.</param>
    public static Outcome<StudyReadings> Study(ReadOnlyMemory<byte> bytes, bool photos)
    {
        if (!Table(bytes, s_study).TryGet(out TextTable? table, out Failure? failure))
            return failure;
        List<StudyReading> readings = [];
        foreach (TextTable.Row row in table.Rows)
        {
            string[] names = [.. s_study.Take(3).Select(column => table.Text(row, column))];
            if (names.FirstOrDefault(n => n.Length is 0 or > LongestName || n.Any(char.IsControl)) is { } wrong)
                return new Failure(StudyInputFailures.FileUnreadable, StudyTexts.Word("readingsFile.nameEmptyLongerThanSigns", row.Name, ListText.Shown(wrong), LongestName), StudyTexts.Get("readingsFile.givePartOperatorAndRepeat"));
            if (!Place(table, row).TryGet(out Placed? at, out failure))
                return failure;
            readings.Add(new(names[0], names[1], names[2], at.Point, at.Stated));
        }

        return new StudyReadings(readings, photos, []);
    }

    /// <summary>Pulses at one station: the columns u, v and perhaps uncertainty.</summary>
    public static Outcome<PulseMarks> Pulses(ReadOnlyMemory<byte> bytes)
    {
        if (!Table(bytes, s_place).TryGet(out TextTable? table, out Failure? failure))
            return failure;
        List<PulseMark> marks = [];
        foreach (TextTable.Row row in table.Rows)
        {
            if (!Place(table, row).TryGet(out Placed? at, out failure))
                return failure;
            marks.Add(new(row.Name, new(at.Point, at.Stated ?? Covariance2.Isotropic(0))));
        }

        return new PulseMarks(marks, table.Has(Uncertainty), []);
    }

    private const string Uncertainty = "uncertainty";

    private static Outcome<TextTable> Table(ReadOnlyMemory<byte> bytes, string[] columns)
    {
        // The byte order mark that spreadsheets write tells the encoding.
        using StreamReader reader = new(new MemoryStream(bytes.ToArray()), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        if (!TextTable.Read(reader.ReadToEnd(), StudyInputFailures.FileUnreadable, columns, Uncertainty).TryGet(out TextTable? table, out Failure? failure))
            return failure;
        return table.Rows.Count > 0
            ? table
            : new Failure(StudyInputFailures.FileEmpty, StudyTexts.Get("readingsFile.fileHasNoReadings"), StudyTexts.Word("readingsFile.beginWithLineAndGive", string.Join(',', columns)));
    }

    private static Outcome<Placed> Place(TextTable table, TextTable.Row row)
    {
        if (!table.Number(row, "u").TryGet(out Number? u, out Failure? failure) || !table.Number(row, "v").TryGet(out Number? v, out failure))
            return failure;
        if (!(Math.Abs(u.Value) <= Farthest && Math.Abs(v.Value) <= Farthest))
            return new Failure(StudyInputFailures.FileUnreadable, StudyTexts.Word("readingsFile.hasPlaceBeyondMmOr", row.Name, Farthest), StudyTexts.Get("readingsFile.giveUAndVIn"));
        if (!table.Has(Uncertainty))
            return new Placed(new(u.Value, v.Value), null);
        if (!table.Number(row, Uncertainty).TryGet(out Number? stated, out failure))
            return failure;
        return stated.Value is >= 0 and <= MostUncertainty
            ? new Placed(new(u.Value, v.Value), Covariance2.Isotropic(stated.Value))
            : new Failure(StudyInputFailures.FileUnreadable, StudyTexts.Word("readingsFile.uncertaintyNotBetweenAndMm", row.Name, MostUncertainty), StudyTexts.Get("readingsFile.giveStandardUncertaintyEitherComponent"));
    }

    private sealed record Placed(CardPoint Point, Covariance2? Stated);
}
