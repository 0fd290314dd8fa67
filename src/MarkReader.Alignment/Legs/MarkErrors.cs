using MarkReader.Quantities;

namespace MarkReader.Alignment.Legs;

/// <summary>The errors of a mark by their sources: those that are its own, and those that move other marks of the leg as well.</summary>
/// <param name="Own">Independent of each other and of every other mark's errors.</param>
/// <param name="Shared">Errors that several marks may have in common.</param>
public sealed record MarkErrors(IReadOnlyList<UncertaintyComponent> Own, IReadOnlyList<SharedError> Shared)
{
    /// <summary>The covariance of the mark: the sum over all errors, mm².</summary>
    public Covariance2 Covariance => Own.Select(c => c.Covariance).Concat(Shared.Select(s => s.Covariance)).Aggregate(Covariance2.Isotropic(0), (a, b) => a + b);

    /// <summary>A mark of which only the covariance is known; it is called noise.</summary>
    public static MarkErrors Undivided(Covariance2 covariance) => new([new(UncertaintySource.Noise, covariance)], []);
}

/// <summary>One error that moves several marks at once, such as that of a printed ruler's length.</summary>
/// <param name="Source">What it comes from.</param>
/// <param name="Name">Errors of the same source and name are the same error; all others are independent.</param>
/// <param name="Displacement">Where it moves this mark when it has the size of its standard uncertainty, mm.</param>
public sealed record SharedError(UncertaintySource Source, string Name, CardVector Displacement)
{
    /// <summary>What it adds to this mark's covariance, mm².</summary>
    public Covariance2 Covariance => Covariance2.Along(Displacement);
}
