using System.Globalization;
using MarkReader.Application.Inputs;
using MarkReader.Application.Records;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;
using MarkReader.Service.Display;

namespace MarkReader.Service.Tests.Display;

/// <summary>The same length on pages, in documents, in pictures, in a refusal and in a sentence of the adviser.</summary>
public sealed class InchesTests
{
    private static readonly Figures s_page = new(new Preferences(true, true));

    private static readonly RecordFormat s_document = RecordFormat.Plain with { Unit = RecordUnit.Inch, HasComma = true };

    /// <summary>From lengths that round to nothing to those of a bed, of both signs.</summary>
    public static TheoryData<double> Lengths { get; } = [.. from size in (double[])[0, 0.00004, 0.0127, 0.05, 0.235, 1.06, 12.345, 25.4, 80, 480.5, 1219.2] from sign in (int[])[1, -1] select sign * size];

    [Theory]
    [MemberData(nameof(Lengths))]
    public void A_measured_length_has_two_decimals_more_than_in_millimetres_wherever_it_stands(double millimetres)
    {
        foreach (int decimals in (int[])[2, 3, 4])
        {
            string format = "0." + new string('0', decimals), text = millimetres.ToString(format, CultureInfo.InvariantCulture);
            // What a sentence says of it is rounded already.
            double said = double.Parse(text, CultureInfo.InvariantCulture);

            string page = s_page.Length(millimetres, decimals);
            Assert.Equal(decimals + 2, page.Split('\u00a0')[0].Split(',')[1].Length);
            Assert.Equal(page, s_document.WithUnit(millimetres, decimals));
            Assert.Equal(Plain(page), Refused(new(millimetres, format)));
            Assert.Equal(Plain(s_page.Length(said, decimals)), Plain(s_page.Sentence(text + " mm")));
        }
    }

    [Theory]
    [MemberData(nameof(Lengths))]
    public void A_stated_length_has_as_few_decimals_as_it_needs_and_four_at_most_wherever_it_stands(double any)
    {
        double millimetres = Math.Round(any, 1) + 0.0;
        string page = s_page.Short(millimetres);

        Assert.Equal(page, s_page.Short(millimetres, 1));
        Assert.Equal(Plain(page), Plain(s_document.Short(millimetres)));
        Assert.Equal(Plain(page), s_page.Field(millimetres) + " in");
        Assert.Equal(Plain(page), Refused(new(millimetres)));
        Assert.Equal(Plain(page), Plain(s_page.Sentence(millimetres.ToString("0.#", CultureInfo.InvariantCulture) + " mm")));
    }

    [Theory]
    [MemberData(nameof(Lengths))]
    public void Pictures_of_pages_write_lengths_as_documents_do(double millimetres)
    {
        PictureNumbers numbers = PictureLook.Of(s_page).Style.Numbers;
        Length length = Length.FromMillimetres(millimetres);

        Assert.Equal(s_document.WithUnit(millimetres, 2), numbers.Measured(length));
        Assert.Equal(s_document.WithUnit(millimetres, 3), numbers.Fine(length));
        Assert.Equal(Plain(s_document.Short(millimetres)), Plain(numbers.Round(length)));
    }

    [Theory]
    // 25.4 mm are one inch exactly (international yard and pound agreement of 1959).
    [InlineData(25.4, "1", "1.0000")]
    [InlineData(480, "18.8976", "18.8976")]
    [InlineData(0.05, "0.002", "0.0020")]
    [InlineData(-0.00001, "0", "0.0000")]
    public void An_inch_is_25_4_millimetres_exactly(double millimetres, string stated, string measured)
    {
        Assert.Equal(stated, InchDigits.Stated(millimetres));
        Assert.Equal(measured, InchDigits.Told(millimetres, "0.00"));
    }

    private static string Refused(SaidLength length) => Plain(s_page.What(new(NumberText.Unreadable, $"{length}", ""))).TrimEnd('.');

    // Pages and documents have a true minus sign and a space that does not break; none of them counts a zero's sign.
    private static string Plain(string text)
    {
        string plain = text.Replace('\u00a0', ' ').Replace('−', '-');
        return plain[0] == '-' && plain.All(c => c is not (>= '1' and <= '9')) ? plain[1..] : plain;
    }
}
