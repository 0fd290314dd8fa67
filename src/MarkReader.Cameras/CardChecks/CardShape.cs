using MarkReader.Cameras.Boards;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.CardChecks;

/// <summary>What was found of a card's print and paper, with the covariance of all of it.</summary>
/// <param name="Scale">Mean length over nominal length; 1 while nobody measured it.</param>
/// <param name="Faults">Of the printed edges, mm towards white.</param>
/// <param name="Groups">The printed edges in the order of the covariance.</param>
/// <param name="Covariance">Of scale, stretch, skew, three coefficients of the bend, then the faults.</param>
internal sealed record CardShape(double Scale, BoardShape Shape, IReadOnlyDictionary<int, double> Faults, IReadOnlyList<int> Groups, Matrix<double> Covariance)
{
    public const int Stretch = 1, Skew = 2, Bend = 3, First = 6;

    /// <summary>What is believed of the scale before the rulers are read: a printer's error (common practice, no source).</summary>
    private const double AnyScale = 0.1;

    /// <summary>The same print on flat paper.</summary>
    public CardShape Flat => this with { Shape = new BoardShape(Shape.Stretch, 0, 0, 0, Shape.Spread) { Skew = Shape.Skew } };

    /// <summary>A print as drawn on the same paper.</summary>
    public CardShape AsDrawn => this with { Scale = 1, Shape = Shape with { Stretch = 0, Skew = 0 }, Faults = new Dictionary<int, double>() };

    /// <summary>With what the rulers measure (one step of a Kalman filter).</summary>
    public CardShape With(RulerScale rulers)
    {
        int n = Covariance.RowCount;
        Matrix<double> prior = Covariance.Clone();
        prior[0, 0] = AnyScale * AnyScale;
        Matrix<double> reads = Matrix<double>.Build.Dense(2, n);
        (reads[0, 0], reads[0, Stretch], reads[1, 0], reads[1, Stretch]) = (1, 0.5, 1, -0.5);
        Matrix<double> noise = Matrix<double>.Build.DiagonalOfDiagonalArray([rulers.UncertaintyU * rulers.UncertaintyU, rulers.UncertaintyV * rulers.UncertaintyV]);
        Vector<double> surprise = Vector<double>.Build.DenseOfArray([rulers.U - Scale - (Shape.Stretch / 2), rulers.V - Scale + (Shape.Stretch / 2)]);
        Matrix<double> carry = prior * reads.Transpose();
        Matrix<double> gain = carry * ((reads * carry) + noise).Inverse();
        return Moved(gain * surprise) with { Covariance = prior - (gain * carry.Transpose()) };
    }

    public CardShape Moved(Vector<double> d) => this with
    {
        Scale = Scale + d[0],
        Shape = new BoardShape(Shape.Stretch + d[Stretch], Shape.BendUu + d[Bend], Shape.BendUv + d[Bend + 1], Shape.BendVv + d[Bend + 2], Shape.Spread) { Skew = Shape.Skew + d[Skew] },
        Faults = Groups.Select((g, i) => (g, i)).ToDictionary(x => x.g, x => Faults.GetValueOrDefault(x.g) + d[First + x.i]),
    };
}
