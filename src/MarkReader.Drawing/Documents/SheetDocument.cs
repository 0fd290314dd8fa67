using MarkReader.Drawing.Pictures;

namespace MarkReader.Drawing.Documents;

/// <summary>A document of several pages, as words, tables and pictures; <see cref="PdfDocument"/> sets it on paper.</summary>
/// <param name="Title">Large, on the first page; small on the others.</param>
/// <param name="Subtitle">Under the title.</param>
/// <param name="Blocks">From the top.</param>
public sealed record SheetDocument(string Title, string Subtitle, IReadOnlyList<DocumentBlock> Blocks)
{
    /// <summary>Who wrote it; in the file's properties only.</summary>
    public string Author { get; init; } = "";

    /// <summary>What it is about; in the file's properties only.</summary>
    public string Subject { get; init; } = "";

    /// <summary>At the foot of every page, left.</summary>
    public string Foot { get; init; } = "";

    /// <summary>How a page's number is written: {0} its number, {1} their count.</summary>
    public string PageNumber { get; init; } = "{0} / {1}";

    /// <summary>The time in the file's properties.</summary>
    public DateTimeOffset Written { get; init; }
}

/// <summary>A part of a document that stands below the part before it.</summary>
public abstract record DocumentBlock
{
    private DocumentBlock()
    {
    }

    /// <summary>Stays on the page of what follows it.</summary>
    public sealed record Heading(string Text) : DocumentBlock;

    /// <summary>What follows begins a page, so that what belongs together is seen at once.</summary>
    public sealed record NewPage : DocumentBlock;

    /// <param name="Small">A remark, set smaller and lighter.</param>
    public sealed record Paragraph(string Text, bool Small = false) : DocumentBlock;

    /// <summary>The result in a box: a sign and a word, with sentences beneath.</summary>
    public sealed record Banner(DocumentTone Tone, string Word, IReadOnlyList<string> Beneath) : DocumentBlock;

    /// <summary>Names with what belongs to them.</summary>
    public sealed record Facts(IReadOnlyList<DocumentFact> All) : DocumentBlock;

    /// <summary>Sentences, each with a dash before it.</summary>
    public sealed record Sentences(IReadOnlyList<string> All) : DocumentBlock;

    /// <summary>Rows under a heading row, which stands again on every page. Its caption stands above it.</summary>
    public sealed record Table(string Caption, IReadOnlyList<TableColumn> Columns, IReadOnlyList<TableRow> Rows) : DocumentBlock;

    /// <summary>Drawings, two in a row.</summary>
    public sealed record Pictures(IReadOnlyList<DocumentPicture> All) : DocumentBlock
    {
        /// <summary>Paragraphs to the right of a picture that stands alone.</summary>
        public IReadOnlyList<string> Beside { get; init; } = [];
    }

    /// <summary>Photos, two in a row.</summary>
    public sealed record Photos(IReadOnlyList<DocumentPhoto> All) : DocumentBlock;

    /// <summary>Lines to be filled in with a pen, kept together with the sentence above them.</summary>
    public sealed record Signature(string Sentence, IReadOnlyList<DocumentFact> Lines) : DocumentBlock;
}

/// <summary>A result's meaning; it has a sign of its own besides its colour.</summary>
public enum DocumentTone
{
    Plain,
    Good,
    Open,
    Bad,
}

public sealed record DocumentFact(string Name, string Text);

/// <summary>A column of a table.</summary>
/// <param name="Heading">Its name.</param>
/// <param name="Unit">Under the name; may be empty.</param>
/// <param name="IsNumber">Set to the right, so that the decimals of one column stand below each other.</param>
/// <param name="Wraps">Takes up the width that is left, in several lines where needed.</param>
public sealed record TableColumn(string Heading, string Unit = "", bool IsNumber = false, bool Wraps = false);

/// <summary>A row of a table.</summary>
/// <param name="Cells">As many as the table has columns.</param>
/// <param name="IsStruck">Set with a line through it: it no longer counts.</param>
public sealed record TableRow(IReadOnlyList<string> Cells, bool IsStruck = false);

/// <summary>A drawing of a document.</summary>
/// <param name="Caption">Beneath it: what it shows, in words. Its title is in the drawing.</param>
public sealed record DocumentPicture(string Caption, IPicture Drawing);

/// <summary>A photo of a document.</summary>
/// <param name="Jpeg">The bytes of a JPEG file.</param>
/// <param name="Caption">Beneath it.</param>
/// <param name="Description">What it shows, for those who do not see it.</param>
public sealed record DocumentPhoto(ReadOnlyMemory<byte> Jpeg, int Width, int Height, string Caption, string Description);
