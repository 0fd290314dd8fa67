using System.Globalization;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>The unit in which a record states lengths.</summary>
public enum RecordUnit
{
    Millimetre,
    Inch,
}

/// <summary>How a record writes numbers and times for people. CSV and JSON do not depend on it.</summary>
/// <param name="Unit">Of lengths; slopes are always in mrad.</param>
/// <param name="HasComma">Whether decimals follow a comma.</param>
/// <param name="Zone">Whose clock the times are those of.</param>
public sealed record RecordFormat(RecordUnit Unit, bool HasComma, TimeZoneInfo Zone)
{
    /// <summary>Millimetres, a decimal point, UTC.</summary>
    public static RecordFormat Plain { get; } = new(RecordUnit.Millimetre, false, TimeZoneInfo.Utc);

    /// <summary>"mm" or "in".</summary>
    public string UnitName => Unit == RecordUnit.Inch ? "in" : "mm";

    /// <summary>The format of these choices.</summary>
    /// <param name="unit">mm or in; null for mm.</param>
    /// <param name="separator">point or comma; null for point.</param>
    public static Outcome<RecordFormat> Read(string? unit, string? separator, TimeZoneInfo zone)
    {
        if (unit is not (null or "mm" or "in"))
            return new Failure(RecordFailures.UnitUnknown, InputTexts.Get("recordFormat.unitNeitherMmNorIn"), InputTexts.Get("recordFormat.useMmOrIn"));
        if (separator is not (null or "point" or "comma"))
            return new Failure(RecordFailures.DecimalUnknown, InputTexts.Get("recordFormat.decimalSignNeitherPointNor"), InputTexts.Get("recordFormat.usePointOrComma"));
        return new RecordFormat(unit == "in" ? RecordUnit.Inch : RecordUnit.Millimetre, separator == "comma", zone);
    }

    /// <summary>A length without its unit.</summary>
    /// <param name="decimals">Of millimetres; inches by <see cref="InchDigits"/>.</param>
    public string Length(double mm, int decimals) => Unit == RecordUnit.Inch ? Number(mm / Quantities.Length.MillimetresPerInch, InchDigits.Measured(decimals)) : Number(mm, decimals);

    /// <summary>Like <see cref="Length"/>, with a plus sign in front of what is above zero.</summary>
    public string SignedLength(double mm, int decimals) => Plus(Length(mm, decimals));

    /// <summary>A length with its unit.</summary>
    public string WithUnit(double mm, int decimals) => $"{Length(mm, decimals)}\u00a0{UnitName}";

    /// <summary>A length of the machine with its unit, as few decimals as it needs.</summary>
    public string Short(double mm) => $"{ShortNumber(mm)}\u00a0{UnitName}";

    /// <summary>The same without its unit.</summary>
    public string ShortNumber(double mm)
    {
        string text = Unit == RecordUnit.Inch ? InchDigits.Stated(mm) : mm.ToString("0.##", CultureInfo.InvariantCulture);
        return Signs(text == "-0" ? "0" : text);
    }

    /// <summary>A number with a true minus sign and a fixed count of decimals; no sign on what rounds to zero.</summary>
    public string Number(double value, int decimals)
    {
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Signs(text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text);
    }

    public string SignedNumber(double value, int decimals) => Plus(Number(value, decimals));

    /// <summary>2026-11-26 14:03.</summary>
    public string Time(DateTimeOffset time) => TimeZoneInfo.ConvertTime(time, Zone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    public string Day(DateTimeOffset time) => TimeZoneInfo.ConvertTime(time, Zone).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public string Clock(DateTimeOffset time) => TimeZoneInfo.ConvertTime(time, Zone).ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    /// <summary>UTC, UTC+01:00.</summary>
    public string Offset(DateTimeOffset time)
    {
        TimeSpan offset = Zone.GetUtcOffset(time);
        return offset == TimeSpan.Zero ? "UTC" : $"UTC{(offset < TimeSpan.Zero ? '−' : '+')}{offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture)}";
    }

    private static string Plus(string text) => text[0] == '−' || text.Trim('0', '.', ',').Length == 0 ? text : "+" + text;

    private string Signs(string text) => (HasComma ? text.Replace('.', ',') : text).Replace('-', '−');
}
