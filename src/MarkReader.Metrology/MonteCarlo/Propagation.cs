using MathNet.Numerics.Random;

namespace MarkReader.Metrology.MonteCarlo;

/// <summary>Propagation of distributions through a model by random draws (JCGM 101:2008, clause 7; JCGM 102:2011, clause 7).</summary>
public static class Propagation
{
    /// <summary>Draws the inputs <see cref="Plan.Trials"/> times and collects what the model makes of them.</summary>
    /// <param name="model">From the drawn values, inputs one after the other, to the outputs; always as many.</param>
    public static Sample Run(IReadOnlyList<IInput> inputs, Func<double[], double[]> model, Plan plan)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(plan.Trials, 100, nameof(plan));
        MersenneTwister random = new(plan.Seed, threadSafe: false);
        double[] drawn = new double[inputs.Sum(i => i.Dimension)];
        double[][] outputs = new double[plan.Trials][];
        for (int trial = 0; trial < plan.Trials; trial++)
        {
            int place = 0;
            foreach (IInput input in inputs)
            {
                input.Draw(random, drawn.AsSpan(place, input.Dimension));
                place += input.Dimension;
            }

            outputs[trial] = model(drawn);
        }

        return new(outputs);
    }
}

/// <summary>How many draws, and the seed of the generator (Mersenne Twister): the same plan gives the same sample.</summary>
/// <param name="Trials">At least 100; 10⁶ gives a 95 % interval to one or two digits of u (JCGM 101, 7.2.1).</param>
public sealed record Plan(int Trials, int Seed);
