using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;
using MarkReader.Metrology.Coverage;
using MarkReader.Metrology.MonteCarlo;

namespace MarkReader.Application.Auditing;

/// <summary>An audit's figures over some photos. Errors are distances from the truth, mm; null when no mark was found.</summary>
public record AuditSummary
{
    /// <summary>A truth farther out than this many times the 95 % region's half-length shows that a statement is wrong.</summary>
    public const double FarFactor = 3;

    public required int Photos { get; init; }

    /// <summary>Photos of which everything is as their truth file says.</summary>
    public required int AsExpected { get; init; }

    /// <summary>Truth files that cannot be used.</summary>
    public required int BadFiles { get; init; }

    /// <summary>Photos that were measured without the camera's profile, since the card in them shows another lens.</summary>
    public required int CameraNotUsed { get; init; }

    /// <summary>Marks that were to be found.</summary>
    public required int Truths { get; init; }

    public required int Found { get; init; }

    public required int Missed { get; init; }

    public required int False { get; init; }

    /// <summary>Found marks over truths, 0 to 1; null without truths.</summary>
    public required double? FoundRate { get; init; }

    /// <summary>False marks over truths, from 0; null without truths.</summary>
    public required double? FalseRate { get; init; }

    /// <summary>Root mean square distance.</summary>
    public required double? Rms { get; init; }

    public required double? Median { get; init; }

    public required double? Max { get; init; }

    public required double? BiasU { get; init; }

    public required double? BiasV { get; init; }

    /// <summary>Part of the found marks whose 95 % region holds the truth, 0 to 1.</summary>
    public required double? Coverage { get; init; }

    /// <summary>Lower end of the coverage's 95 % confidence interval (<see cref="ClopperPearson"/>).</summary>
    public required double? CoverageLow { get; init; }

    /// <summary>Upper end of the coverage's 95 % confidence interval.</summary>
    public required double? CoverageHigh { get; init; }

    /// <summary>Root mean square of the distance that the marks' covariances state.</summary>
    public required double? StatedRms { get; init; }

    /// <summary>Median of the Mahalanobis distances √(dᵀC⁻¹d); 1.18 when the statements are right.</summary>
    [JsonNumberHandling(JsonNumberHandling.AllowNamedFloatingPointLiterals)]
    public required double? MedianMahalanobis { get; init; }

    /// <summary>The largest of them; "Infinity" in JSON when a mark claims no uncertainty at all.</summary>
    [JsonNumberHandling(JsonNumberHandling.AllowNamedFloatingPointLiterals)]
    public required double? MaxMahalanobis { get; init; }

    /// <summary>Marks whose truth lies beyond three times the 95 % region: Mahalanobis distance over 3·√5.991 = 7.34.</summary>
    public required int BeyondThrice { get; init; }

    public static AuditSummary Of(IReadOnlyList<AuditedPhoto> photos)
    {
        MatchedMark[] found = [.. photos.SelectMany(p => p.Found)];
        double[] errors = [.. found.Select(f => f.Error.Magnitude).Order()];
        double[] distances = [.. found.Select(f => f.Mahalanobis).Order()];
        int truths = photos.Sum(p => p.Expected);
        int invented = photos.Sum(p => p.False);
        int covered = found.Count(f => f.Covered);
        Interval? coverage = found.Length == 0 ? null : ClopperPearson.Interval(covered, found.Length);
        double? Mean(Func<MatchedMark, double> value) => found.Length == 0 ? null : found.Average(value);
        double? Rate(int count) => truths == 0 ? null : count / (double)truths;
        return new()
        {
            Photos = photos.Count,
            AsExpected = photos.Count(p => p.AsExpected),
            BadFiles = photos.Count(p => !p.FilesAreSound),
            CameraNotUsed = photos.Count(p => p.CameraNotUsed is not null),
            Truths = truths,
            Found = found.Length,
            Missed = photos.Sum(p => p.Missed),
            False = invented,
            FoundRate = Rate(found.Length),
            FalseRate = Rate(invented),
            Rms = Root(Mean(f => f.Error.Magnitude * f.Error.Magnitude)),
            Median = MedianOf(errors),
            Max = errors.Length == 0 ? null : errors[^1],
            BiasU = Mean(f => f.Error.U),
            BiasV = Mean(f => f.Error.V),
            Coverage = found.Length == 0 ? null : covered / (double)found.Length,
            CoverageLow = coverage?.Low,
            CoverageHigh = coverage?.High,
            StatedRms = Root(Mean(f => f.Mark.Centre.Covariance.Uu + f.Mark.Centre.Covariance.Vv)),
            MedianMahalanobis = MedianOf(distances),
            MaxMahalanobis = distances.Length == 0 ? null : distances[^1],
            BeyondThrice = found.Count(f => f.IsFar),
        };
    }

    private static double? MedianOf(double[] sorted) => sorted.Length == 0 ? null : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

    private static double? Root(double? square) => square is { } s ? Math.Sqrt(s) : null;
}

/// <summary>The figures over the photos of one kind of scene.</summary>
public sealed record AuditKind : AuditSummary
{
    [SetsRequiredMembers]
    private AuditKind(string kind, AuditSummary figures)
        : base(figures) => Kind = kind;

    public string Kind { get; }

    /// <summary>The kinds in order of name.</summary>
    public static IReadOnlyList<AuditKind> AllOf(IReadOnlyList<AuditedPhoto> photos) =>
        [.. photos.GroupBy(p => p.Kind).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new AuditKind(g.Key, AuditSummary.Of([.. g])))];
}
