using System.Globalization;
using MarkReader.Application.Inputs;
using MarkReader.Application.Records;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Display;

/// <summary>Lengths and numbers in the unit and with the decimal sign that the reader has chosen. All lengths that go in and out are mm.</summary>
public sealed class Figures
{
    public Figures(IHttpContextAccessor accessor)
        : this(accessor.HttpContext is { } context ? Preferences.Read(context.Request) : new(false, false))
    {
    }

    public Figures(Preferences preferences) => Preferences = preferences;

    public Preferences Preferences { get; }

    /// <summary>mm or in.</summary>
    public string Unit => Preferences.Inches ? "in" : "mm";

    /// <summary>The same choices for what the application writes; days are those of this machine's clock.</summary>
    public RecordFormat Record => new(Preferences.Inches ? RecordUnit.Inch : RecordUnit.Millimetre, Preferences.Comma, TimeZoneInfo.Local);

    /// <summary>A length with its unit: 0.25 mm, or 0.0098 in.</summary>
    /// <param name="decimals">Of the millimetres.</param>
    public string Length(double millimetres, int decimals = 2) => Value(millimetres, decimals) + "\u00a0" + Unit;

    /// <summary>A length without its unit.</summary>
    public string Value(double millimetres, int decimals = 2) => Number(Convert(millimetres), Decimals(decimals));

    /// <summary>A length with a sign in front, without its unit.</summary>
    public string Signed(double millimetres, int decimals = 2)
    {
        string text = Value(millimetres, decimals);
        return millimetres > 0 && text.Any(c => c is >= '1' and <= '9') ? "+" + text : text;
    }

    /// <summary>A length with as few decimals as it needs, with its unit: 480 mm.</summary>
    public string Short(double millimetres) => Field(millimetres) + "\u00a0" + Unit;

    /// <summary>The same with a limit of its own.</summary>
    /// <param name="most">Decimals of the millimetres; inches have four at most.</param>
    public string Short(double millimetres, int most) =>
        Sign(Preferences.Inches ? InchDigits.Stated(millimetres) : millimetres.ToString("0." + new string('#', most), CultureInfo.InvariantCulture)) + "\u00a0" + Unit;

    /// <summary>A length as text for an input, exact to a ten-thousandth.</summary>
    public string Field(double millimetres) => Sign(Preferences.Inches ? InchDigits.Stated(millimetres) : millimetres.ToString("0.####", CultureInfo.InvariantCulture)).Replace('−', '-');

    /// <summary>A number with a fixed count of decimals and a true minus sign; no sign on what rounds to zero.</summary>
    public string Number(double value, int decimals) => Sign(Pages.Words.Number(value, decimals));

    /// <summary>A number's text with the reader's decimal sign.</summary>
    public string Sign(string number) => Preferences.Comma ? number.Replace('.', ',') : number;

    /// <summary>Numbers in a row, apart by a comma, or by a semicolon where the comma is the decimal sign.</summary>
    public string Row(params string[] numbers) => string.Join(Preferences.Comma ? "; " : ", ", numbers);

    /// <summary>A sentence of the adviser.</summary>
    public string Sentence(string sentence) => Sentences.Show(sentence, Preferences);

    /// <summary>A sentence that knows its lengths and numbers.</summary>
    public string Say(Wording wording) => wording.In(Said, Unit, Preferences.Comma ? ';' : ',', Sign);

    /// <summary>What is wrong, as a sentence.</summary>
    public string What(Failure failure) => Say(failure, failure.What);

    /// <summary>What to do about it, as a sentence.</summary>
    public string Remedy(Failure failure) => Say(failure, failure.Remedy);

    /// <summary>What was typed, in mm.</summary>
    public Outcome<TypedLength> ReadMillimetres(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return new Failure(NumberText.Unreadable, ServiceTexts.Get("figures.nothingWasTyped"), ServiceTexts.Word("figures.giveLengthIn", Unit));
        return ReadNumber(text, Preferences.Inches).TryGet(out Number? number, out Failure? failure)
            ? double.IsFinite(number.Value) ? new TypedLength(Preferences.Inches ? number.Value * Quantities.Length.MillimetresPerInch : number.Value) : new Failure(NumberText.Unreadable, ServiceTexts.Get("figures.lengthNotFiniteNumber"), ServiceTexts.Word("figures.giveLengthIn", Unit))
            : failure;
    }

    /// <summary>What was typed, without a unit. With a decimal comma chosen, a comma before three digits is no thousands sign.</summary>
    /// <param name="inches">Whether it is a length in inches.</param>
    public Outcome<Number> ReadNumber(string text, bool inches = false) => NumberText.Read(
        Preferences.Comma && text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal) ? text.Replace(',', '.') : text, inches);

    // Of a refusal that is kept with its photo only the text is left, in mm; it repeats nothing that was typed.
    private string Say(Failure failure, Wording wording) => Pages.Words.Sentence(
        failure.Code.Kind == FailureKind.NotMeasurable && !wording.HasLengths ? Sentence(wording.ToString()) : Say(wording));

    private string Said(SaidLength length)
    {
        string text = !Preferences.Inches || !double.IsFinite(length.Millimetres)
            ? length.Millimetres.ToString(length.Format, CultureInfo.InvariantCulture)
            : InchDigits.Told(length.Millimetres, length.Format);
        return Sign(text) + (length.HasUnit ? " " + Unit : "");
    }

    private double Convert(double millimetres) => Preferences.Inches ? millimetres / Quantities.Length.MillimetresPerInch : millimetres;

    private int Decimals(int ofMillimetres) => Preferences.Inches ? InchDigits.Measured(ofMillimetres) : ofMillimetres;
}

/// <summary>A length that a user typed, mm.</summary>
public sealed record TypedLength(double Millimetres);
