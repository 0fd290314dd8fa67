namespace MarkReader.Metrology.MonteCarlo;

/// <summary>One input of a model, or several that depend on each other, as a distribution from which values are drawn.</summary>
public interface IInput
{
    /// <summary>How many values one draw gives.</summary>
    int Dimension { get; }

    /// <summary>Draws <see cref="Dimension"/> values.</summary>
    void Draw(Random random, Span<double> values);
}
