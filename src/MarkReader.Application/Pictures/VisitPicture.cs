using MarkReader.Alignment.Advice;
using MarkReader.Drawing.Pictures;

namespace MarkReader.Application.Pictures;

/// <summary>A picture of a visit.</summary>
/// <param name="Name">Lower case letters, digits and hyphens, such as "target-1".</param>
/// <param name="Description">What it shows in sentences, with all its numbers: for those who cannot see it.</param>
/// <param name="Drawing">The picture itself.</param>
public sealed record VisitPicture(string Name, string Description, IPicture Drawing)
{
    internal VisitPicture(string name, PictureSentences sentences, IPicture drawing)
        : this(name, sentences.Whole, drawing) => Sentences = sentences;

    private PictureSentences? Sentences { get; init; }

    /// <summary>The description with the newest marks only.</summary>
    /// <param name="most">So many marks are named.</param>
    /// <param name="earlier">What is said in place of the others, from their count.</param>
    internal string Brief(int most, Func<int, string> earlier) => Sentences is { } s && s.Marks.Count > most
        ? string.Join(' ', [.. s.Marks.TakeLast(most), earlier(s.Marks.Count - most), .. s.Others])
        : Description;
}

/// <summary>What a picture shows, one sentence a mark and the others after them.</summary>
internal sealed record PictureSentences(IReadOnlyList<string> Marks, IReadOnlyList<string> Others)
{
    public string Whole => string.Join(' ', Marks.Concat(Others));
}

/// <summary>The language of a visit's pictures.</summary>
/// <param name="Style">Words inside the pictures, numbers.</param>
/// <param name="Words">Titles and descriptions.</param>
public sealed record VisitPictureStyle(PictureStyle Style, VisitPictureWords Words)
{
    /// <summary>A turn in words, from turns clockwise positive. Default: the reader's language, such as "1/8 turn clockwise".</summary>
    public Func<double, string> TurnWords { get; init; } = turns => HandTurn.Nearest(turns, 0).Advice;

    /// <summary>The reader's language (CurrentUICulture), millimetres, a decimal point.</summary>
    public static VisitPictureStyle Default => new(PictureStyle.Default, new());
}
