using MarkReader.Service.Display;
using MarkReader.Service.Pages;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace MarkReader.Service.Tests.Pages;

public sealed class WordsTests
{
    private static readonly StringLocalizer<MeasureTexts> s_texts = new(new ResourceManagerStringLocalizerFactory(Options.Create(new LocalizationOptions()), NullLoggerFactory.Instance));

    [Theory]
    [InlineData(3.24, 1.06, "3.2 mm right and 1.1 mm up")]
    [InlineData(-3.24, -1.06, "3.2 mm left and 1.1 mm down")]
    [InlineData(0.04, -2, "2.0 mm down")]
    [InlineData(0.3, -0.04, "0.3 mm right")]
    [InlineData(-0.04, 0.04, "")]
    public void A_move_is_told_as_seen_on_the_card(double u, double v, string words) =>
        Assert.Equal(words, new MeasureWords(s_texts, new(new Preferences(false, false))).Move(u, v).Replace('\u00a0', ' '));

    [Fact]
    public void A_move_is_told_in_inches_with_a_comma() =>
        Assert.Equal("0,128 in right and 0,042 in up", new MeasureWords(s_texts, new(new Preferences(true, true))).Move(3.24, 1.06).Replace('\u00a0', ' '));

    [Theory]
    [InlineData(1.005, 2, "+1.00")]
    [InlineData(-0.004, 2, "0.00")]
    [InlineData(-0.126, 2, "−0.13")]
    [InlineData(0, 1, "0.0")]
    public void A_signed_number_has_a_true_minus_and_no_sign_on_zero(double value, int decimals, string text) => Assert.Equal(text, Words.Signed(value, decimals));

    [Theory]
    [InlineData("no mark is seen", "No mark is seen.")]
    [InlineData("Done.", "Done.")]
    [InlineData("", "")]
    public void A_part_of_a_line_becomes_a_sentence(string text, string sentence) => Assert.Equal(sentence, Words.Sentence(text));
}
