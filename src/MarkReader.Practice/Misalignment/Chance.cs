using MarkReader.Quantities;

namespace MarkReader.Practice.Misalignment;

/// <summary>The draws that a random machine is made of; each takes the same count of numbers whatever the range.</summary>
internal sealed class Chance(Random random)
{
    public bool Heads() => random.Next(2) == 0;

    public int Below(int count) => random.Next(count);

    public double Between(double least, double greatest) => least + ((greatest - least) * random.NextDouble());

    public double Within(double half) => Between(-half, half);

    public Length Within(Length half) => Length.FromMillimetres(Within(half.Millimetres));

    public Length Normal(Length deviation) => Length.FromMillimetres(MathNet.Numerics.Distributions.Normal.Sample(random, 0, deviation.Millimetres));
}
