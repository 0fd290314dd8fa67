using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Aiming;

/// <summary>What each source contributes to the covariance of the aim point (JCGM 100:2008, 5.1.2; JCGM 102:2011, 6.2.1).</summary>
/// <remarks>
/// With J = ∂aim/∂(marks, path lengths), a source whose errors have the covariance C adds J·C·Jᵀ. An error that several marks share
/// is one error: its displacements of all marks go through J together, so that what it does to one mark may cancel what it does to another.
/// </remarks>
internal static class AimBudget
{
    /// <param name="fit">The fitted line and its sensitivity to marks and path lengths.</param>
    /// <returns>Sources in the order of <see cref="UncertaintySource"/>; those that add nothing are left out.</returns>
    public static IReadOnlyList<UncertaintyComponent> Of(Leg leg, BeamFrame frame, BeamLineConditions conditions, ConditionFit.Solution fit)
    {
        double k = leg.PivotOffset.Millimetres, uk = leg.PivotUncertainty.Millimetres;
        BeamLine line = BeamLineConditions.Line(fit.Line.Parameters);
        // The aim is (x0 − sx·k)/cos t, y0 − sy·k.
        Matrix<double> byLine = Matrix<double>.Build.DenseOfArray(new[,] { { 1 / frame.Cos, -k / frame.Cos, 0, 0 }, { 0, 0, 1, -k } });
        Matrix<double> byObserved = byLine * fit.ByObserved;
        SortedDictionary<UncertaintySource, Covariance2> budget = [];
        foreach ((UncertaintySource source, Matrix<double> covariance) in conditions.Parts)
            budget[source] = (byObserved * covariance.TransposeAndMultiply(byObserved)).Points();

        budget[UncertaintySource.PivotOffset] = Covariance2.Along(new(-line.Sx * uk / frame.Cos, -line.Sy * uk));
        return [.. budget.Where(c => c.Value.Uu + c.Value.Vv > 0).Select(c => new UncertaintyComponent(c.Key, c.Value))];
    }
}
