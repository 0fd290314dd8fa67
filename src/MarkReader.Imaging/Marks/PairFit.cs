namespace MarkReader.Imaging.Marks;

/// <summary>Measures two marks that overlap by their joint outline.</summary>
internal static class PairFit
{
    public static IReadOnlyList<FittedMark>? Of(Disc first, Disc second, MarkLayers layers)
    {
        // The profile of each with the other hidden; the blur of its edge is not known yet, so a little more is hidden.
        double margin = 0.1 + (0.05 * (first.Radius + second.Radius));
        SymmetricMark? Alone(Disc one, Disc other) =>
            SymmetricFit.Fit(layers.Hiding(other with { Radius = other.Radius + margin }).Coarse, one.Centre, 2 * one.Radius);
        if (Alone(first, second) is not { } a || Alone(second, first) is not { } b)
            return null;
        return OutlineFit.Fit(layers.Light, (first, second), Math.Min(a.EdgeWidth, b.EdgeWidth)) is { } outlines
            ? [Mark(outlines[0], a), Mark(outlines[1], b)]
            : null;
    }

    private static FittedMark Mark(FittedOutline o, SymmetricMark s) => new(o.Centre, o.Covariance, o.LevelDoubt, o, s with { Diameter = 2 * o.Radius }, MarkMethod.Outline);
}
