using System.Text.RegularExpressions;
using MarkReader.Alignment.Legs;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.Quantities;
using MarkReader.Service.Display;

namespace MarkReader.Service.Tests.Display;

public sealed partial class FiguresTests
{
    private static readonly Figures s_comma = new(new Preferences(false, true)), s_inch = new(new Preferences(true, false)), s_point = new(new Preferences(false, false));

    [Theory]
    // 25.4 mm are one inch exactly (ISO 31; international yard and pound agreement of 1959).
    [InlineData(25.4, "25.40 mm", "25,40 mm", "1.0000 in")]
    [InlineData(-0.127, "−0.13 mm", "−0,13 mm", "−0.0050 in")]
    [InlineData(0.0004, "0.00 mm", "0,00 mm", "0.0000 in")]
    public void A_length_is_shown_in_the_chosen_unit_and_with_the_chosen_sign(double millimetres, string point, string comma, string inch) =>
        Assert.Equal((point, comma, inch), (Plain(s_point.Length(millimetres)), Plain(s_comma.Length(millimetres)), Plain(s_inch.Length(millimetres))));

    [Theory]
    [InlineData("1.25", 1.25, 31.75)]
    [InlineData("1,25", 1.25, 31.75)]
    [InlineData("−2", -2, -50.8)]
    public void A_typed_length_is_read_in_the_chosen_unit(string text, double millimetres, double inch)
    {
        Assert.Equal(millimetres, s_comma.ReadMillimetres(text).ValueOrThrow().Millimetres, 12);
        Assert.Equal(inch, s_inch.ReadMillimetres(text).ValueOrThrow().Millimetres, 12);
    }

    [Fact]
    public void A_comma_before_three_digits_is_a_decimal_sign_once_the_comma_is_chosen()
    {
        Assert.Equal(1.125, s_comma.ReadMillimetres("1,125").ValueOrThrow().Millimetres);
        Assert.False(s_point.ReadMillimetres("1,125").TryGet(out _, out _));
        foreach (string none in (string[])["", "ten", "nan", "1,2,3"])
            Assert.False(s_comma.ReadMillimetres(none).TryGet(out _, out _), none);
    }

    [Fact]
    public void The_example_of_what_to_write_is_in_the_unit_of_the_field()
    {
        Assert.False(s_inch.ReadMillimetres("abc").TryGet(out _, out Failure? inch));
        Assert.False(s_point.ReadMillimetres("abc").TryGet(out _, out Failure? millimetre));
        Assert.Equal(("Write it like 3, 3.15 or 3,15.", "Write it like 80, 80.5 or 80,5."), (s_inch.Remedy(inch!), s_point.Remedy(millimetre!)));
    }

    [Theory]
    [InlineData("The survey goes on at x 508, y 0 mm.", "The survey goes on at x 20, y 0 in.")]
    [InlineData("The mark walks by u +2.54 and v -0.10 mm.", "The mark walks by u +0.1000 and v -0.0039 in.")]
    [InlineData("Turn it by 1/8. 12.70 mm, within 0.5 mm.", "Turn it by 1/8. 0.5000 in, within 0.0197 in.")]
    public void A_sentence_of_the_adviser_is_told_in_inches(string sentence, string inches) => Assert.Equal(inches, s_inch.Sentence(sentence));

    [Theory]
    [InlineData("The survey goes on at x 508.5, y 0 mm.", "The survey goes on at x 508,5; y 0 mm.")]
    [InlineData("It changes the slope by (2.54, -0.10) mrad, then 3 marks.", "It changes the slope by (2,54; -0,10) mrad, then 3 marks.")]
    [InlineData("The survey goes on at x 500, y 0 mm. Leg 1, 2 marks.", "The survey goes on at x 500, y 0 mm. Leg 1, 2 marks.")]
    public void Numbers_with_a_decimal_comma_are_not_kept_apart_by_a_comma(string sentence, string shown)
    {
        Assert.Equal(shown, s_comma.Sentence(sentence));
        Wording place = $"u {new SaidLength(-1.5, HasUnit: false)}, v {new SaidLength(2)} lies beside '1,5, 2'";
        Failure beside = new(ServiceFailures.FieldInvalid, place, "");
        Assert.Equal(("U -1,5; v 2 mm lies beside '1,5, 2'.", "U -1.5, v 2 mm lies beside '1,5, 2'."), (s_comma.What(beside), s_point.What(beside)));
        Assert.Equal("0,08; 0,11", s_comma.Row("0,08", "0,11"));
        Assert.Equal("0.08, 0.11", s_point.Row("0.08", "0.11"));
    }

    [Fact]
    public void A_refusal_states_its_lengths_in_the_chosen_unit_and_leaves_what_was_typed()
    {
        Failure swapped = LegChecks.NearAndFar(508, 80, 2)!;
        Assert.Equal("The near path length (508 mm) is longer than the far one (80 mm); they look swapped.", s_point.What(swapped));
        Assert.Equal("The near path length (20 in) is longer than the far one (3.1496 in); they look swapped.", s_inch.What(swapped));
        Assert.Equal("Give the height in in.", s_inch.Remedy(new(swapped.Code, "", $"give the height in {Wording.Unit}")));
        Assert.Equal("'12.5 mm' is no number.", new Figures(new Preferences(true, true)).What(new(swapped.Code, "'12.5 mm' is no number", "")));
        Assert.Equal("The offset 2,5 mm is too large.", s_comma.What(new(swapped.Code, $"the offset {new SaidLength(2.5)} is too large", "")));
    }

    [Fact]
    public void No_reason_of_whole_visits_keeps_a_millimetre_or_a_decimal_point()
    {
        Figures figures = new(new Preferences(true, true));
        int sentences = 0;
        foreach (int seed in (int[])[6, 11, 23, 42])
        {
            PracticeSession session = PracticeSession.Begin(new PracticeRequest(seed, Twist: 2), UsualStock.Washers, new StatedMarks()).ValueOrThrow();
            PlayPractice.Run(session, advice =>
            {
                foreach (string text in (string[])[advice.Reason, .. advice.Warnings.Select(w => w.Message)])
                {
                    string shown = figures.Sentence(text);
                    Assert.DoesNotMatch(LeftOver(), shown);
                    sentences++;
                }
            }).ValueOrThrow();
        }

        Assert.True(sentences > 50);
    }

    private static string Plain(string text) => text.Replace('\u00a0', ' ');

    [GeneratedRegex(@"\d\s?mm\b|\d\.\d", RegexOptions.CultureInvariant)]
    private static partial Regex LeftOver();
}
