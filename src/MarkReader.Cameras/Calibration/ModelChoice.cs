using MarkReader.Cameras.Boards;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>Drops the one term that a camera may truly lack when the photos do not show it, and tells what they show of the others.</summary>
/// <remarks>
/// Lens, print and paper always have a little of the other terms. Leaving out those that happen to be small in the photos states the rest
/// more surely than they are known: intervals after a choice of terms hold the truth too seldom (Leeb and Pötscher, Econometric Theory 21,
/// 2005). Wald's test on the covariance.
/// </remarks>
internal sealed class ModelChoice(IReadOnlyList<BoardView> views)
{
    /// <summary>Unequal focal lengths stay when their ratio exceeds this: a sensor's pixels are square, so the photos must speak clearly (no source).</summary>
    public const double Threshold = 8;

    private static readonly (CameraTerms Term, int[] Elements)[] s_groups =
    [
        (CameraTerms.K1, [Globals.K1]),
        (CameraTerms.K2, [Globals.K2]),
        (CameraTerms.K3, [Globals.K3]),
        (CameraTerms.Decentring, [Globals.P1, Globals.P2]),
        (CameraTerms.Aspect, []),
        (CameraTerms.Stretch, [Globals.Stretch]),
        (CameraTerms.Spread, [Globals.Spread]),
        (CameraTerms.Bend, [Globals.Bend, Globals.Bend + 1, Globals.Bend + 2]),
    ];

    public (FittedCalibration Fit, IReadOnlyList<TermEvidence> Evidence)? Simplest(FittedCalibration full)
    {
        double aspect = Ratio(full, CameraTerms.Aspect, []);
        if (aspect > Threshold)
            return (full, Kept(full));
        if (new CalibrationFit(views, full.Terms & ~CameraTerms.Aspect, robust: true).Run(Square(full.State)) is not { } square)
            return null;
        return (square, [.. Kept(square), new(CameraTerms.Aspect, aspect, false)]);
    }

    private static TermEvidence[] Kept(FittedCalibration fit) =>
        [.. s_groups.Where(g => fit.Terms.HasFlag(g.Term)).Select(g => new TermEvidence(g.Term, Ratio(fit, g.Term, g.Elements), true))];

    private static double Ratio(FittedCalibration fit, CameraTerms term, int[] elements)
    {
        Matrix<double> c = fit.Covariance;
        if (term == CameraTerms.Aspect)
        {
            double difference = fit.State.Shared.Camera.FocalX - fit.State.Shared.Camera.FocalY;
            return difference * difference / (c[Globals.FocalX, Globals.FocalX] + c[Globals.FocalY, Globals.FocalY] - (2 * c[Globals.FocalX, Globals.FocalY]));
        }

        double[] values = fit.State.Shared.Values();
        Vector<double> theta = Vector<double>.Build.Dense([.. elements.Select(e => values[e])]);
        Matrix<double> part = Matrix<double>.Build.Dense(elements.Length, elements.Length, (i, j) => c[elements[i], elements[j]]);
        return theta.DotProduct(part.Solve(theta)) / elements.Length;
    }

    /// <summary>With one focal length, the mean of both.</summary>
    private static CalibrationState Square(CalibrationState state)
    {
        double half = (state.Shared.Camera.FocalX - state.Shared.Camera.FocalY) / 2;
        double[] d = new double[Globals.Count];
        (d[Globals.FocalX], d[Globals.FocalY]) = (-half, half);
        return state with { Shared = state.Shared.Moved(d) };
    }
}
