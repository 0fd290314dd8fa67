using CsCheck;
using MarkReader.Quantities;

namespace MarkReader.Cards.Tests;

public sealed class PrintedEdgesTests
{
    private static readonly Dictionary<string, IReadOnlyList<IReadOnlyList<CardPoint>>> s_ink =
        CardKinds.All.ToDictionary(k => k.Name, PrintedInk.Polygons);

    public static TheoryData<string> Kinds { get; } = new(CardKinds.All.Select(k => k.Name));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Along_every_edge_black_lies_on_one_side_and_white_on_the_other(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        IReadOnlyList<PrintedEdge> edges = PrintedEdges.Of(kind);
        double reach = kind.Patches[0].Square / 6;
        Gen.Int[0, edges.Count - 1].Select(Gen.Double[0.01, 0.99], Gen.Double[0.001, 1]).Sample((i, along, depth) =>
        {
            PrintedEdge edge = edges[i];
            CardPoint at = edge.From + (along * (edge.To - edge.From));
            CardVector across = depth * reach * edge.ToWhite;
            return Shapes.IsInk(s_ink[name], at - across) && !Shapes.IsInk(s_ink[name], at + across);
        });
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void All_sides_of_markers_and_of_black_squares_are_among_the_edges(string name)
    {
        CardKind kind = CardKinds.Find(name)!;
        int squares = kind.Patches.Sum(p => Enumerable.Range(0, p.Rows).Sum(r => Enumerable.Range(0, p.Columns).Count(c => p.IsBlack(c, r))));

        Assert.Equal(4 * (kind.Markers.Count + squares), PrintedEdges.Of(kind).Count);
        Assert.All(PrintedEdges.Of(kind), e => Assert.Equal(1, e.ToWhite.Magnitude, 1e-12));
    }
}
