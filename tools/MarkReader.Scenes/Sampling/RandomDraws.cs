namespace MarkReader.Scenes.Sampling;

internal static class RandomDraws
{
    public static double Between(this Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    public static bool Chance(this Random random, double probability) => random.NextDouble() < probability;

    public static T Pick<T>(this Random random, params IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];
}
