using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.LineFitting;

/// <summary>Conditions f(b, l) = 0 between parameters b and quantities l, linear in l; all l may be uncertain.</summary>
internal interface IConditions
{
    /// <summary>The observed quantities l.</summary>
    Vector<double> Observed { get; }

    /// <summary>Their covariance; may be singular, as for exact quantities.</summary>
    Matrix<double> Covariance { get; }

    /// <summary>Parameters to start from.</summary>
    Vector<double> Start { get; }

    /// <summary>f at the observed quantities, and ∂f/∂l.</summary>
    (Vector<double> Value, Matrix<double> ByObserved) At(Vector<double> parameters);

    /// <summary>∂f/∂b at the adjusted quantities.</summary>
    Matrix<double> ByParameters(Vector<double> parameters, Vector<double> adjusted);
}

/// <summary>
/// Least squares with errors in every observed quantity: the conditions' values are weighted by their effective
/// variance M = B·C·Bᵀ (B = ∂f/∂l), which depends on the parameters and is iterated with them.
/// </summary>
/// <remarks>
/// Minimises χ² = fᵀ·M⁻¹·f by Gauss–Newton steps with ∂f/∂b at the adjusted quantities, halved while they do not lower χ².
/// H. I. Britt and R. H. Luecke, Technometrics 15 (1973) 233; for a line the result is that of D. York et al.,
/// Am. J. Phys. 72 (2004) 367, doi:10.1119/1.1632486.
/// </remarks>
internal static class ConditionFit
{
    private const int MostSteps = 200;
    private const int MostHalvings = 40;

    // The last step must be this small a part of the parameters' standard deviations.
    private const double Tolerance = 1e-8;

    // Where rounding keeps χ² from falling further, a step this small a part of them is as good.
    private const double AtRounding = 1e-4;

    /// <summary>The fitted parameters and how they depend on the observed quantities.</summary>
    /// <param name="Line">Parameters, their covariance, χ².</param>
    /// <param name="ByObserved">∂b/∂l, the weights held fast: with C the covariance of l, ∂b/∂l·C·(∂b/∂l)ᵀ is the parameters' covariance.</param>
    internal sealed record Solution(LinearFit Line, Matrix<double> ByObserved);

    /// <summary>The fit, or null when the iteration does not settle.</summary>
    public static Solution? Solve(IConditions conditions)
    {
        State state = new(conditions, conditions.Start);
        for (int step = 0; step < MostSteps && double.IsFinite(state.ChiSquare); step++)
        {
            Matrix<double> design = conditions.ByParameters(state.Parameters, state.Adjusted());
            LinearFit fit = LeastSquares.Generalised(design, -state.Value, state.Effective);
            if (Next(conditions, state, fit.Parameters) is not { } next)
                return Settled(fit, state.ChiSquare, AtRounding) ? new(fit with { Parameters = state.Parameters, ChiSquare = state.ChiSquare }, state.Sensitivity(design, fit.Covariance)) : null;
            if (Settled(fit, state.ChiSquare, Tolerance))
                return new(fit with { Parameters = next.Parameters, ChiSquare = next.ChiSquare }, state.Sensitivity(design, fit.Covariance));
            state = next;
        }

        return null;
    }

    private static State? Next(IConditions conditions, State state, Vector<double> step)
    {
        for (int halving = 0; halving < MostHalvings; halving++, step *= 0.5)
        {
            State next = new(conditions, state.Parameters + step);
            // Equal within rounding is as low as it gets.
            if (next.ChiSquare <= (state.ChiSquare * (1 + 1e-9)) + 1e-9)
                return next;
        }

        return null;
    }

    private static bool Settled(LinearFit step, double chiSquare, double tolerance)
    {
        double scatter = step.DegreesOfFreedom == 0 ? 1 : Math.Sqrt(Math.Max(1, chiSquare / step.DegreesOfFreedom));
        for (int i = 0; i < step.Parameters.Count; i++)
        {
            if (!(Math.Abs(step.Parameters[i]) <= tolerance * scatter * Math.Sqrt(step.Covariance[i, i])))
                return false;
        }

        return true;
    }

    private sealed class State
    {
        private readonly IConditions _conditions;
        private readonly Matrix<double> _byObserved;
        private readonly Matrix<double> _spread;
        private readonly Vector<double> _weighted;

        public State(IConditions conditions, Vector<double> parameters)
        {
            (_conditions, Parameters) = (conditions, parameters);
            (Value, _byObserved) = conditions.At(parameters);
            _spread = conditions.Covariance * _byObserved.Transpose();
            Effective = _byObserved * _spread;
            _weighted = Weighted(Effective, Value);
            ChiSquare = Value.DotProduct(_weighted);
        }

        public Vector<double> Parameters { get; }

        public Vector<double> Value { get; }

        public Matrix<double> Effective { get; }

        public double ChiSquare { get; }

        public Vector<double> Adjusted() => _conditions.Observed - (_spread * _weighted);

        /// <summary>−(Xᵀ·M⁻¹·X)⁻¹·Xᵀ·M⁻¹·B for the design X, whose first factor is the parameters' covariance.</summary>
        public Matrix<double> Sensitivity(Matrix<double> design, Matrix<double> covariance) =>
            -covariance * design.TransposeThisAndMultiply(Effective.Cholesky().Solve(_byObserved));

        // Far from any sensible parameters rounding can cost the matrix its definiteness: such a step is not taken.
        private static Vector<double> Weighted(Matrix<double> effective, Vector<double> value)
        {
            try
            {
                return effective.Cholesky().Solve(value);
            }
            catch (ArgumentException)
            {
                return double.PositiveInfinity * value;
            }
        }
    }
}
