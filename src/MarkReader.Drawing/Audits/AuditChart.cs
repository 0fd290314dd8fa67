namespace MarkReader.Drawing.Audits;

/// <summary>What the picture of an audit shows.</summary>
/// <param name="Kinds">A row for each kind of scene, from the top.</param>
/// <param name="Overall">The row for all of them.</param>
/// <param name="Figures">Lines of the table beside the distances.</param>
public sealed record AuditChart(
    string Title, IReadOnlyList<KindRow> Kinds, KindRow Overall, DistanceCurve Distances, IReadOnlyList<FigureLine> Figures);

/// <summary>One kind of scene.</summary>
/// <param name="Count">Found marks of the true ones, and false ones, in words, at the end of the row.</param>
/// <param name="Errors">Distances of the found marks from the truth, mm.</param>
/// <param name="Rms">Their root mean square, mm; null without marks.</param>
/// <param name="StatedRms">Root mean square of the distances that the marks' covariances state, mm.</param>
/// <param name="Coverage">Null without marks.</param>
public sealed record KindRow(string Name, string Count, IReadOnlyList<double> Errors, double? Rms, double? StatedRms, CoverageBar? Coverage);

/// <summary>Part of the truths inside the stated 95 % region, with the ends of its 95 % confidence interval; 0 to 1.</summary>
public sealed record CoverageBar(double Part, double Low, double High);

/// <summary>Squared Mahalanobis distances against those of correct statements.</summary>
/// <param name="Points">Sorted; the expected value is the median of that rank.</param>
/// <param name="Band">Range of each rank with 95 % probability, at some of the ranks.</param>
public sealed record DistanceCurve(IReadOnlyList<(double Expected, double Observed)> Points, IReadOnlyList<(double Expected, double Low, double High)> Band);

/// <summary>A name and a value.</summary>
public sealed record FigureLine(string Name, string Value);
