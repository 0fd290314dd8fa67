namespace MarkReader.Rendering.Sampling;

/// <summary>Random numbers as scenes need them.</summary>
public static class RandomDraws
{
    public static double Between(this Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    /// <summary>A normal variable of mean 0 and standard deviation 1 (Box and Muller, Ann. Math. Stat. 29, 1958).</summary>
    public static double Normal(this Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    public static bool Chance(this Random random, double probability) => random.NextDouble() < probability;

    public static T Pick<T>(this Random random, params IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];
}
