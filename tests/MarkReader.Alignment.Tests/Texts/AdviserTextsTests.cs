using System.Globalization;
using System.Resources;
using MarkReader.Alignment.Texts;

namespace MarkReader.Alignment.Tests.Texts;

public sealed class AdviserTextsTests
{
    /// <summary>sentences.txt was written while the sentences still stood in the code.</summary>
    [Fact]
    public void Every_sentence_reads_as_it_did_before_it_was_moved_to_the_resource_file()
    {
        using StreamReader recorded = new(typeof(AdviserTextsTests).Assembly.GetManifestResourceStream("sentences.txt")!);
        Assert.Equal(recorded.ReadToEnd(), string.Concat(EverySentence.All().Select(s => s + "\n")));
    }

    [Fact]
    public void A_name_without_a_text_is_an_error() =>
        Assert.Throws<MissingManifestResourceException>(() => AdviserTexts.Get("leg.noSuchText"));

    [Fact]
    public void Numbers_keep_their_point_where_the_thread_writes_commas()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        commas.NumberFormat.NumberDecimalSeparator = ",";
        try
        {
            CultureInfo.CurrentCulture = commas;
            Assert.Equal("The marks over the bed lie up to 1.25 mm apart.", AdviserTexts.Say("spread", 1.25));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
