using MarkReader.Cards;
using MarkReader.Drawing.Cards;
using MarkReader.Drawing.Tests.Support;
using MarkReader.Quantities;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata;

namespace MarkReader.Drawing.Tests.Cards;

public sealed class PngCardTests
{
    public static TheoryData<string, int> Kinds { get; } = new() { { "plate", 40 }, { "bed", 20 } };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_picture_is_the_card_to_its_outline_with_the_resolution_stored(string name, int pixelsPerMm)
    {
        CardKind kind = CardKinds.Find(name)!;
        byte[] png = Png(kind);

        IImageInfo info = Image.Identify(png);

        Assert.Equal(kind.OuterSide * pixelsPerMm, info.Width);
        Assert.Equal(kind.OuterSide * pixelsPerMm, info.Height);
        Assert.Equal(PixelResolutionUnit.PixelsPerMeter, info.Metadata.ResolutionUnits);
        Assert.Equal(pixelsPerMm * 1000, info.Metadata.HorizontalResolution);
        Assert.Equal(pixelsPerMm * 1000, info.Metadata.VerticalResolution);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_straight_edge_stands_within_a_hundredth_of_a_millimetre(string name, int pixelsPerMm)
    {
        CardKind kind = CardKinds.Find(name)!;
        GreyPicture picture = GreyPicture.FromPng(Png(kind));
        const double reach = 0.4; // mm to either side of an edge, less than the smallest free width
        int edges = 0;
        foreach (PrintedEdge edge in PrintedEdges.Of(kind))
        {
            // A line of pixels across the edge, a third of its length along, counted in ink: the edge is where the ink ends.
            CardPoint at = edge.From + ((1.0 / 3) * (edge.To - edge.From));
            bool upright = edge.ToWhite.U != 0;
            double across = (upright ? (kind.OuterSide / 2) + at.U : (kind.OuterSide / 2) - at.V) * pixelsPerMm;
            int along = (int)Math.Floor((upright ? (kind.OuterSide / 2) - at.V : (kind.OuterSide / 2) + at.U) * pixelsPerMm);
            int from = (int)Math.Round(across - (reach * pixelsPerMm));
            int to = (int)Math.Round(across + (reach * pixelsPerMm));
            double ink = upright ? picture.RowInk(along, from, to) : picture.ColumnInk(along, from, to);
            bool inkFirst = upright ? edge.ToWhite.U > 0 : edge.ToWhite.V < 0;
            double found = inkFirst ? from + ink : to - ink;
            Assert.Equal(across / pixelsPerMm, found / pixelsPerMm, 0.01);
            edges++;
        }

        Assert.True(edges >= 32, $"{edges} edges");
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_ink_is_centred(string name, int pixelsPerMm)
    {
        CardKind kind = CardKinds.Find(name)!;
        GreyPicture picture = GreyPicture.FromPng(Png(kind));
        double[] ends = [.. kind.Markers.SelectMany(m => m.Corners).Select(c => c.U).Order()];
        int left = (int)Math.Round((ends[0] + (kind.OuterSide / 2)) * pixelsPerMm);
        int row = (int)((kind.OuterSide / 2) * pixelsPerMm);

        // The middle row passes through the middle markers at the left and the right; their outer borders mirror each other.
        Assert.Equal(1, picture.Ink(left, row));
        Assert.Equal(0, picture.Ink(left - 1, row));
        Assert.Equal(1, picture.Ink(picture.Width - 1 - left, row));
        Assert.Equal(0, picture.Ink(picture.Width - left, row));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_free_zone_and_the_cards_rim_are_blank(string name, int pixelsPerMm)
    {
        CardKind kind = CardKinds.Find(name)!;
        GreyPicture picture = GreyPicture.FromPng(Png(kind));
        int from = (int)Math.Round((kind.OuterSide - kind.ZoneSide) / 2 * pixelsPerMm);
        int to = picture.Width - from;

        Assert.Equal(0, Enumerable.Range(from, to - from).Sum(y => picture.RowInk(y, from, to)));
        int last = picture.Width - 1;
        Assert.Equal(0, picture.RowInk(0, 0, picture.Width) + picture.RowInk(last, 0, picture.Width));
        Assert.Equal(0, picture.ColumnInk(0, 0, picture.Height) + picture.ColumnInk(last, 0, picture.Height));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_labels_are_printed_upright_and_turned(string name, int pixelsPerMm)
    {
        CardKind kind = CardKinds.Find(name)!;
        GreyPicture picture = GreyPicture.FromPng(Png(kind));
        Assert.Equal(2, kind.Labels.Count);
        foreach (CardLabel label in kind.Labels)
        {
            // A box one and a half cap heights high and four long holds ink at the label and nothing between it and the box's rim.
            (double w, double h) = label.TurnDegrees == 0 ? (5.2, 1.2) : (1.2, 5.2);
            int left = (int)((label.Centre.U + (kind.OuterSide / 2) - (w * label.Height / 2)) * pixelsPerMm);
            int top = (int)(((kind.OuterSide / 2) - label.Centre.V - (h * label.Height / 2)) * pixelsPerMm);
            int right = left + (int)(w * label.Height * pixelsPerMm);
            int bottom = top + (int)(h * label.Height * pixelsPerMm);
            double ink = Enumerable.Range(top, bottom - top).Sum(y => picture.RowInk(y, left, right));
            Assert.InRange(ink / ((bottom - top) * (right - left)), 0.1, 0.4);
            Assert.Equal(0, picture.RowInk(top, left, right) + picture.RowInk(bottom, left, right), 0.01);
            Assert.Equal(0, picture.ColumnInk(left, top, bottom) + picture.ColumnInk(right, top, bottom), 0.01);
        }
    }

    private static byte[] Png(CardKind kind) => CardSheet.Write(kind, CardFormat.Png, Paper.A4);
}
