using MarkReader.Metrology.Studies;
using MathNet.Numerics.Distributions;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>A study whose standard deviations are known.</summary>
public sealed record KnownComponents(int Parts, int Operators, int Repeats, double Part, double Operator, double Interaction, double Photo, double Within)
{
    /// <summary>The true variance of a component.</summary>
    public double Variance(StudyPart part) => part switch
    {
        StudyPart.Parts => Part * Part,
        StudyPart.Operator => Operator * Operator,
        StudyPart.Interaction => Interaction * Interaction,
        StudyPart.Photo => Photo * Photo,
        StudyPart.Within => Within * Within,
        StudyPart.Repeatability => Variance(StudyPart.Photo) + Variance(StudyPart.Within),
        StudyPart.Reproducibility => Variance(StudyPart.Operator) + Variance(StudyPart.Interaction),
        _ => Variance(StudyPart.Repeatability) + Variance(StudyPart.Reproducibility),
    };

    public IReadOnlyList<Reading> Draw(Random random)
    {
        double Gauss(double sd) => sd == 0 ? 0 : Normal.Sample(random, 0, sd);
        double[] parts = [.. Enumerable.Range(0, Parts).Select(_ => Gauss(Part))];
        List<Reading> readings = [];
        for (int j = 0; j < Operators; j++)
        {
            double person = Gauss(Operator);
            double[] cells = [.. parts.Select(_ => Gauss(Interaction))];
            for (int k = 0; k < Repeats; k++)
            {
                double photo = Gauss(Photo);
                for (int i = 0; i < Parts; i++)
                    readings.Add(new($"{i}", $"{j}", $"{k}", parts[i] + person + cells[i] + photo + Gauss(Within)));
            }
        }

        return readings;
    }
}
