using MarkReader.Drawing.Fonts;
using SkiaSharp;

namespace MarkReader.Drawing.Documents;

/// <summary>Sets the blocks of a document one below the other.</summary>
internal sealed class BlockSetter(PageFlow flow)
{
    private const double AfterBlock = 3.2, BeforeHeading = 4.2, AfterHeading = 1.4;
    private const double BannerPad = 3.6, SignSize = 6.4, FactGutter = 4, LineRoom = 12;

    public void Set(IReadOnlyList<DocumentBlock> blocks)
    {
        for (int i = 0; i < blocks.Count; i++)
        {
            if (blocks[i] is DocumentBlock.Heading heading)
            {
                flow.Gap(BeforeHeading);
                flow.Need(Ink.Heading.Leading + AfterHeading + (i + 1 < blocks.Count ? Beginning(blocks[i + 1]) : 0));
                flow.Put(Ink.Heading.Leading + AfterHeading, (canvas, y) => Ink.Heading.Draw(canvas, heading.Text, PageFlow.Left, y));
                continue;
            }

            Set(blocks[i]);
            flow.Gap(AfterBlock);
        }
    }

    // What of a block stays on one page with the heading above it.
    private double Beginning(DocumentBlock block) => block switch
    {
        DocumentBlock.Table table => new TableSetter(flow, table).Beginning,
        DocumentBlock.Pictures pictures => new FigureSetter(flow).Height(pictures),
        DocumentBlock.Photos photos => new FigureSetter(flow).Height(photos),
        DocumentBlock.Paragraph paragraph => Math.Min(40, Ink.Body.Wrap(paragraph.Text, flow.Width).Count * Ink.Body.Leading),
        DocumentBlock.Signature signature => Height(signature),
        _ => 3 * Ink.Body.Leading,
    };

    private void Set(DocumentBlock block)
    {
        switch (block)
        {
            case DocumentBlock.NewPage:
                flow.Need(flow.Room);
                break;
            case DocumentBlock.Paragraph paragraph:
                Lines(paragraph.Small ? Ink.Small : Ink.Body, paragraph.Text, 0);
                break;
            case DocumentBlock.Banner banner:
                Banner(banner);
                break;
            case DocumentBlock.Facts facts:
                Facts(facts);
                break;
            case DocumentBlock.Sentences sentences:
                foreach (string text in sentences.All)
                    Item(text);
                break;
            case DocumentBlock.Table table:
                new TableSetter(flow, table).Set();
                break;
            case DocumentBlock.Pictures pictures:
                new FigureSetter(flow).Set(pictures);
                break;
            case DocumentBlock.Photos photos:
                new FigureSetter(flow).Set(photos);
                break;
            case DocumentBlock.Signature signature:
                Signature(signature);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block));
        }
    }

    private void Lines(Ink ink, string text, double indent)
    {
        IReadOnlyList<string> lines = ink.Wrap(text, flow.Width - indent);
        // No single line at the foot of a page.
        flow.Need(Math.Min(lines.Count, 2) * ink.Leading);
        foreach (string line in lines)
            flow.Put(ink.Leading, (canvas, y) => ink.Draw(canvas, line, PageFlow.Left + indent, y));
    }

    private void Item(string text)
    {
        flow.Need(2 * Ink.Body.Leading);
        flow.Put(0, (canvas, y) => Ink.Body.Draw(canvas, "–", PageFlow.Left, y));
        Lines(Ink.Body, text, 4);
        flow.Gap(0.5);
    }

    private void Banner(DocumentBlock.Banner banner)
    {
        double indent = BannerPad + SignSize + 3, width = flow.Width - indent - BannerPad;
        Ink word = new(Faces.Bold, 5, Colour(banner.Tone));
        IReadOnlyList<string> lines = [.. banner.Beneath.SelectMany(s => Ink.Body.Wrap(s, width))];
        double height = (2 * BannerPad) + word.Leading + (lines.Count * Ink.Body.Leading);
        flow.Put(height, (canvas, y) =>
        {
            using SKPaint ground = new() { Color = Ground(banner.Tone) };
            canvas.DrawRect((float)PageFlow.Left, (float)y, (float)flow.Width, (float)height, ground);
            using SKPaint edge = new() { Color = word.Colour };
            canvas.DrawRect((float)PageFlow.Left, (float)y, 1.2f, (float)height, edge);
            Sign(canvas, banner.Tone, PageFlow.Left + BannerPad + (SignSize / 2), y + BannerPad + (word.Leading / 2));
            word.Draw(canvas, banner.Word, PageFlow.Left + indent, y + BannerPad);
            for (int i = 0; i < lines.Count; i++)
                Ink.Body.Draw(canvas, lines[i], PageFlow.Left + indent, y + BannerPad + word.Leading + (i * Ink.Body.Leading));
        });
    }

    // A tick, a cross, a ring or a bar: told apart without colour.
    private static void Sign(SKCanvas canvas, DocumentTone tone, double x, double y)
    {
        using SKPaint pen = PageFlow.Rule(Colour(tone), 0.95);
        pen.StrokeCap = SKStrokeCap.Round;
        pen.StrokeJoin = SKStrokeJoin.Round;
        (float cx, float cy, float r) = ((float)x, (float)y, (float)SignSize / 2 * 0.72f);
        switch (tone)
        {
            case DocumentTone.Good:
                canvas.DrawLine(cx - r, cy + (0.1f * r), cx - (0.25f * r), cy + (0.8f * r), pen);
                canvas.DrawLine(cx - (0.25f * r), cy + (0.8f * r), cx + r, cy - (0.8f * r), pen);
                break;
            case DocumentTone.Bad:
                canvas.DrawLine(cx - r, cy - r, cx + r, cy + r, pen);
                canvas.DrawLine(cx - r, cy + r, cx + r, cy - r, pen);
                break;
            case DocumentTone.Open:
                canvas.DrawCircle(cx, cy, r, pen);
                break;
            default:
                canvas.DrawLine(cx - r, cy, cx + r, cy, pen);
                break;
        }
    }

    private static SKColor Colour(DocumentTone tone) => tone switch
    {
        DocumentTone.Good => new(0x17, 0x60, 0x3A),
        DocumentTone.Bad => new(0xA0, 0x18, 0x18),
        DocumentTone.Open => new(0x8A, 0x5A, 0x00),
        _ => Ink.Black,
    };

    private static SKColor Ground(DocumentTone tone) => tone switch
    {
        DocumentTone.Good => new(0xEE, 0xF6, 0xF1),
        DocumentTone.Bad => new(0xFC, 0xF0, 0xEF),
        DocumentTone.Open => new(0xFD, 0xF6, 0xE6),
        _ => new(0xF1, 0xF3, 0xF3),
    };

    private void Facts(DocumentBlock.Facts facts)
    {
        double names = Math.Min(flow.Width / 3, facts.All.Max(f => Ink.Body.Width(f.Name)));
        double left = PageFlow.Left + names + FactGutter, width = flow.Width - names - FactGutter;
        Ink name = Ink.Body with { Colour = Ink.Grey };
        foreach (DocumentFact fact in facts.All)
        {
            IReadOnlyList<string> lines = Ink.Body.Wrap(fact.Text, width), labels = name.Wrap(fact.Name, names + 0.01);
            double height = (Math.Max(lines.Count, labels.Count) * Ink.Body.Leading) + 0.7;
            flow.Put(height, (canvas, y) =>
            {
                for (int i = 0; i < labels.Count; i++)
                    name.Draw(canvas, labels[i], PageFlow.Left, y + (i * name.Leading));
                for (int i = 0; i < lines.Count; i++)
                    Ink.Body.Draw(canvas, lines[i], left, y + (i * Ink.Body.Leading));
            });
        }
    }

    private double Height(DocumentBlock.Signature signature) =>
        (Ink.Body.Wrap(signature.Sentence, flow.Width).Count * Ink.Body.Leading) + (signature.Lines.Count * LineRoom);

    private void Signature(DocumentBlock.Signature signature)
    {
        IReadOnlyList<string> lines = Ink.Body.Wrap(signature.Sentence, flow.Width);
        double words = lines.Count * Ink.Body.Leading, from = PageFlow.Left + 34;
        flow.Put(Height(signature), (canvas, y) =>
        {
            for (int i = 0; i < lines.Count; i++)
                Ink.Body.Draw(canvas, lines[i], PageFlow.Left, y + (i * Ink.Body.Leading));
            using SKPaint rule = PageFlow.Rule(Ink.Black, 0.2);
            for (int i = 0; i < signature.Lines.Count; i++)
            {
                double foot = y + words + ((i + 1) * LineRoom);
                Ink.Body.Draw(canvas, signature.Lines[i].Name, PageFlow.Left, foot - Ink.Body.Leading);
                Ink.Body.Draw(canvas, signature.Lines[i].Text, from + 1, foot - Ink.Body.Leading - 0.4);
                canvas.DrawLine((float)from, (float)foot, (float)(from + 95), (float)foot, rule);
            }
        });
    }
}
