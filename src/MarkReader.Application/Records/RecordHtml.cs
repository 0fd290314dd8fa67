using System.Globalization;
using System.Net;
using System.Text;
using MarkReader.Drawing.Documents;
using MarkReader.Drawing.Pictures;

namespace MarkReader.Application.Records;

/// <summary>A record as one HTML file that needs nothing else: pictures and photos are in it, there is no script, and it prints on A4 and Letter.</summary>
/// <remarks>Well-formed XML besides, so that any program can read it.</remarks>
public static class RecordHtml
{
    /// <summary>What a browser may do with it: show its own style and pictures.</summary>
    public const string Policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static byte[] Write(VisitRecord record, RecordFormat format) => Encoding.UTF8.GetBytes(Write(RecordDocument.Of(record, format)));

    private static string Write(SheetDocument document)
    {
        StringBuilder html = new();
        html.Append(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="{(CultureInfo.CurrentUICulture.Name is { Length: > 0 } language ? language : "en")}">
            <head>
            <meta charset="utf-8"/>
            <meta name="viewport" content="width=device-width, initial-scale=1"/>
            <title>{E(document.Title)} · {E(document.Subtitle)}</title>
            <style>
            {RecordStyle.Text}
            </style>
            </head>
            <body>
            <main>
            <header>
            <h1>{E(document.Title)}</h1>
            <p class="subtitle">{E(document.Subtitle)}</p>
            </header>

            """);
        foreach (DocumentBlock block in document.Blocks)
            Block(html, block);
        html.Append(CultureInfo.InvariantCulture, $"</main>\n<footer><p>{E(document.Foot)}</p></footer>\n</body>\n</html>\n");
        return html.ToString();
    }

    private static void Block(StringBuilder html, DocumentBlock block)
    {
        switch (block)
        {
            case DocumentBlock.Heading heading:
                html.Append(CultureInfo.InvariantCulture, $"<h2>{E(heading.Text)}</h2>\n");
                break;
            case DocumentBlock.NewPage:
                break;
            case DocumentBlock.Paragraph paragraph:
                html.Append(CultureInfo.InvariantCulture, $"<p{(paragraph.Small ? " class=\"note\"" : "")}>{E(paragraph.Text)}</p>\n");
                break;
            case DocumentBlock.Banner banner:
                html.Append(CultureInfo.InvariantCulture, $"<section class=\"banner {Tone(banner.Tone)}\"><p class=\"word\"><span aria-hidden=\"true\">{Sign(banner.Tone)}</span> {E(banner.Word)}</p>\n");
                foreach (string sentence in banner.Beneath)
                    html.Append(CultureInfo.InvariantCulture, $"<p>{E(sentence)}</p>\n");
                html.Append("</section>\n");
                break;
            case DocumentBlock.Facts facts:
                Facts(html, "facts", facts.All);
                break;
            case DocumentBlock.Sentences sentences:
                html.Append("<ul>\n");
                foreach (string text in sentences.All)
                    html.Append(CultureInfo.InvariantCulture, $"<li>{E(text)}</li>\n");
                html.Append("</ul>\n");
                break;
            case DocumentBlock.Table table:
                Table(html, table);
                break;
            case DocumentBlock.Pictures pictures:
                html.Append("<div class=\"pictures\">\n");
                foreach (DocumentPicture picture in pictures.All)
                {
                    html.Append(CultureInfo.InvariantCulture, $"<figure><img alt=\"\" src=\"data:image/svg+xml;base64,{Convert.ToBase64String(PictureFile.Svg(picture.Drawing))}\"/>");
                    html.Append(CultureInfo.InvariantCulture, $"<figcaption>{E(picture.Caption)}</figcaption></figure>\n");
                }

                foreach (string text in pictures.Beside)
                    html.Append(CultureInfo.InvariantCulture, $"<p>{E(text)}</p>\n");

                html.Append("</div>\n");
                break;
            case DocumentBlock.Photos photos:
                html.Append("<div class=\"photos\">\n");
                foreach (DocumentPhoto photo in photos.All)
                {
                    html.Append(CultureInfo.InvariantCulture, $"<figure><img alt=\"{E(photo.Description)}\" width=\"{photo.Width}\" height=\"{photo.Height}\" src=\"data:image/jpeg;base64,{Convert.ToBase64String(photo.Jpeg.Span)}\"/>");
                    html.Append(CultureInfo.InvariantCulture, $"<figcaption>{E(photo.Caption)}</figcaption></figure>\n");
                }

                html.Append("</div>\n");
                break;
            case DocumentBlock.Signature signature:
                html.Append(CultureInfo.InvariantCulture, $"<section class=\"signature\"><p>{E(signature.Sentence)}</p>\n");
                Facts(html, "lines", signature.Lines);
                html.Append("</section>\n");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block));
        }
    }

    private static void Facts(StringBuilder html, string kind, IReadOnlyList<DocumentFact> facts)
    {
        html.Append(CultureInfo.InvariantCulture, $"<dl class=\"{kind}\">\n");
        foreach (DocumentFact fact in facts)
            html.Append(CultureInfo.InvariantCulture, $"<dt>{E(fact.Name)}</dt><dd>{E(fact.Text)}</dd>\n");
        html.Append("</dl>\n");
    }

    private static void Table(StringBuilder html, DocumentBlock.Table table)
    {
        html.Append("<div class=\"table\"><table>\n");
        if (table.Caption.Length > 0)
            html.Append(CultureInfo.InvariantCulture, $"<caption>{E(table.Caption)}</caption>\n");
        html.Append("<thead><tr>");
        foreach (TableColumn column in table.Columns)
        {
            string unit = column.Unit.Length > 0 ? $" <span class=\"unit\">{E(column.Unit)}</span>" : "";
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{Class(column)}>{E(column.Heading)}{unit}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (TableRow row in table.Rows)
        {
            html.Append("<tr>");
            for (int i = 0; i < row.Cells.Count; i++)
            {
                string text = row.IsStruck && row.Cells[i].Length > 0 ? $"<del>{E(row.Cells[i])}</del>" : E(row.Cells[i]);
                html.Append(CultureInfo.InvariantCulture, $"<td{Class(table.Columns[i])} data-head=\"{E(Head(table.Columns[i]))}\">{text}</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody></table></div>\n");
    }

    // Beside each cell on a narrow screen, where a row is a block.
    private static string Head(TableColumn column) => column.Unit.Length > 0 ? $"{column.Heading} {column.Unit}" : column.Heading;

    private static string Class(TableColumn column) => column.IsNumber ? " class=\"number\"" : column.Wraps ? " class=\"wide\"" : "";

    private static string Tone(DocumentTone tone) => tone switch
    {
        DocumentTone.Good => "good",
        DocumentTone.Bad => "bad",
        DocumentTone.Open => "open",
        _ => "plain",
    };

    private static string Sign(DocumentTone tone) => tone switch
    {
        DocumentTone.Good => "✓",
        DocumentTone.Bad => "✕",
        DocumentTone.Open => "○",
        _ => "–",
    };

    // Signs that no text of HTML may hold would be told as errors by a reader that checks.
    private static string E(string text) => WebUtility.HtmlEncode(string.Concat(text.Select(c => char.IsControl(c) && c is not '\n' ? ' ' : c)));
}
