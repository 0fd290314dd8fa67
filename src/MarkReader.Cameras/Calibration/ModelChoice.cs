using MarkReader.Cameras.Boards;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Calibration;

/// <summary>Drops the terms that the photos do not show, one after the other, the least evident first.</summary>
/// <remarks>Wald's test on the clustered covariance; a higher radial term goes before a lower one.</remarks>
internal sealed class ModelChoice(IReadOnlyList<BoardView> views)
{
    /// <summary>A term stays when its ratio exceeds this; Akaike's criterion drops below 2 (IEEE Trans. Autom. Control 19, 1974).</summary>
    public const double Threshold = 2;

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
        FittedCalibration fit = full;
        List<TermEvidence> dropped = [];
        while (true)
        {
            (CameraTerms Term, double Ratio)[] left = [.. s_groups
                .Where(g => fit.Terms.HasFlag(g.Term) && MayGo(g.Term, fit.Terms))
                .Select(g => (g.Term, Ratio(fit, g.Term, g.Elements)))];
            (CameraTerms Term, double Ratio) weakest = left.DefaultIfEmpty().MinBy(l => l.Ratio);
            if (weakest.Term == CameraTerms.None || weakest.Ratio > Threshold)
                break;
            if (new CalibrationFit(views, fit.Terms & ~weakest.Term, robust: true).Run(Without(fit.State, weakest.Term)) is not { } simpler)
                return null;
            dropped.Add(new(weakest.Term, weakest.Ratio, false));
            fit = simpler;
        }

        IEnumerable<TermEvidence> kept = s_groups.Where(g => fit.Terms.HasFlag(g.Term)).Select(g => new TermEvidence(g.Term, Ratio(fit, g.Term, g.Elements), true));
        return (fit, [.. kept, .. dropped]);
    }

    private static bool MayGo(CameraTerms term, CameraTerms terms) => term switch
    {
        CameraTerms.K1 => !terms.HasFlag(CameraTerms.K2) && !terms.HasFlag(CameraTerms.K3),
        CameraTerms.K2 => !terms.HasFlag(CameraTerms.K3),
        _ => true,
    };

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

    private static CalibrationState Without(CalibrationState state, CameraTerms term)
    {
        double[] values = state.Shared.Values();
        double[] d = new double[Globals.Count];
        foreach (int e in s_groups.Single(g => g.Term == term).Elements)
            d[e] = -values[e];
        if (term == CameraTerms.Aspect)
        {
            double mean = (values[Globals.FocalX] + values[Globals.FocalY]) / 2;
            (d[Globals.FocalX], d[Globals.FocalY]) = (mean - values[Globals.FocalX], mean - values[Globals.FocalY]);
        }

        return state with { Shared = state.Shared.Moved(d) };
    }
}
