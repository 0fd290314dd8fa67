using MarkReader.Cards;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;

namespace MarkReader.Drawing.Tests.Cards;

public sealed class CardSheetTests
{
    [Theory]
    [InlineData("card.pdf", "%PDF-")]
    [InlineData("card.SVG", "<?xml")]
    [InlineData("a.b.Png", "\u0089PNG")]
    public void The_files_ending_chooses_the_format(string file, string start)
    {
        CardFormat format = CardFormat.OfFile(file).ValueOrThrow();

        byte[] bytes = CardSheet.Write(CardKinds.All[0], format, Paper.Letter);

        Assert.Equal(start.Select(c => (byte)c), bytes.Take(start.Length));
    }

    [Theory]
    [InlineData("card.docx")]
    [InlineData("card")]
    public void Another_ending_is_refused_with_what_to_do(string file)
    {
        Assert.False(CardFormat.OfFile(file).TryGet(out _, out Failure? failure));
        Assert.Equal("CARD_FORMAT_UNKNOWN", failure.Code.Name);
        Assert.Equal(FailureKind.BadInput, failure.Code.Kind);
        Assert.Contains(".pdf", failure.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Papers_are_known_by_name_in_any_case_and_others_are_refused()
    {
        Assert.Same(Paper.A4, Paper.Find("A4").ValueOrThrow());
        Assert.Same(Paper.Letter, Paper.Find("letter").ValueOrThrow());
        Assert.False(Paper.Find("a5").TryGet(out _, out Failure? failure));
        Assert.Equal("PAPER_UNKNOWN", failure.Code.Name);
        Assert.Contains("a4", failure.Hint, StringComparison.Ordinal);
    }
}
