using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.LineFitting;
using MarkReader.Alignment.Verdicts;
using MarkReader.Quantities;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Survey;

/// <summary>A component of the mark.</summary>
public enum SurveyComponent
{
    /// <summary>u, sideways.</summary>
    Sideways,

    /// <summary>v, vertical.</summary>
    Vertical,
}

/// <summary>The marks at the head as a function of its place: b0 + bx·x + by·y + bxy·x·y for u and for v, by least squares weighted with the marks' covariances.</summary>
public sealed class SurveyFit
{
    private readonly SurveyModel _model;

    private SurveyFit(Bed bed, SurveyModel model, LinearFit fit)
    {
        (Bed, _model, Parameters, Covariance) = (bed, model, fit.Parameters, fit.Covariance);
        Quality = new(
            fit.ChiSquare,
            fit.DegreesOfFreedom,
            fit.DegreesOfFreedom == 0 ? null : SpecialFunctions.GammaUpperRegularized(fit.DegreesOfFreedom / 2.0, fit.ChiSquare / 2));
    }

    public Bed Bed { get; }

    /// <summary>The terms fitted to each component.</summary>
    public IReadOnlyList<SurveyTerm> Terms => _model.Terms;

    /// <summary>How well the marks agree with the terms.</summary>
    public FitQuality Quality { get; }

    /// <summary>The coefficients of u, then those of v, mm.</summary>
    internal Vector<double> Parameters { get; }

    internal Matrix<double> Covariance { get; }

    /// <summary>The fit; null when the places do not determine the four terms.</summary>
    internal static SurveyFit? Solve(Bed bed, IReadOnlyList<SurveyMark> marks)
    {
        if (SurveyModel.For(bed, marks) is not { } model)
            return null;
        int n = marks.Count, p = model.Terms.Length;
        Matrix<double> design = Matrix<double>.Build.Dense(2 * n, 2 * p), covariance = Matrix<double>.Build.Dense(2 * n, 2 * n);
        Vector<double> observed = Vector<double>.Build.Dense(2 * n);
        for (int i = 0; i < n; i++)
        {
            double[] row = model.Row(bed, marks[i].X.Millimetres, marks[i].Y.Millimetres);
            for (int j = 0; j < p; j++)
                design[2 * i, j] = design[(2 * i) + 1, p + j] = row[j];
            Covariance2 c = marks[i].Mark.Covariance;
            (observed[2 * i], observed[(2 * i) + 1]) = (marks[i].Mark.Point.U, marks[i].Mark.Point.V);
            (covariance[2 * i, 2 * i], covariance[(2 * i) + 1, (2 * i) + 1]) = (c.Uu, c.Vv);
            covariance[2 * i, (2 * i) + 1] = covariance[(2 * i) + 1, 2 * i] = c.Uv;
        }

        return new(bed, model, LeastSquares.Generalised(design, observed, covariance));
    }

    /// <summary>A coefficient in mm over the full travels, and its standard uncertainty.</summary>
    public Prediction Coefficient(SurveyComponent component, SurveyTerm term)
    {
        int at = Index(component, term);
        return at < 0 ? throw new ArgumentException("The survey's places do not determine this term.", nameof(term)) : new(Parameters[at], Math.Sqrt(Covariance[at, at]));
    }

    /// <summary>Probability of a coefficient at least as large by the marks' errors alone, were it truly zero (χ² with 1 degree of freedom).</summary>
    public double Probability(SurveyComponent component, SurveyTerm term)
    {
        Prediction coefficient = Coefficient(component, term);
        return SpecialFunctions.Erfc(Math.Abs(coefficient.Value) / (Math.Sqrt(2) * coefficient.Uncertainty));
    }

    /// <summary>The mark to expect with the head at a place, without the scatter of a new mark.</summary>
    public MeasuredPoint At(Length x, Length y)
    {
        Matrix<double> rows = Rows(x, y);
        Vector<double> place = rows * Parameters;
        return new(new(place[0], place[1]), Covariance2Of(rows));
    }

    public MeasuredPoint At(BedCorner corner) => Combine((1, corner));

    /// <summary>The middle of the marks at the four corners.</summary>
    public MeasuredPoint Mean() => Combine([.. BedCorners.All.Select(corner => (0.25, corner))]);

    /// <summary>
    /// The distances between any two of the marks at the corners, and, when bows are fitted, at the middles as well: none is longer than the spread over the bed.
    /// </summary>
    public IReadOnlyList<MeasuredVector> Differences()
    {
        double[] parts = Terms.Count > 4 ? [0, 0.5, 1] : [0, 1];
        Matrix<double>[] places = [.. from s in parts from t in parts select Rows(s * Bed.X, t * Bed.Y)];
        return
        [
            .. from i in Enumerable.Range(0, places.Length)
            from j in Enumerable.Range(0, i)
            let rows = places[i] - places[j]
            let difference = rows * Parameters
            select new MeasuredVector(new(difference[0], difference[1]), Covariance2Of(rows)),
        ];
    }

    /// <summary>A sum of the marks at corners, each times its weight.</summary>
    internal MeasuredPoint Combine(params (double Weight, BedCorner Corner)[] parts)
    {
        Matrix<double> rows = parts.Select(p => p.Weight * Rows(Bed.Place(p.Corner).X, Bed.Place(p.Corner).Y)).Aggregate((a, b) => a + b);
        Vector<double> place = rows * Parameters;
        return new(new(place[0], place[1]), Covariance2Of(rows));
    }

    internal int Index(SurveyComponent component, SurveyTerm term)
    {
        int at = Array.IndexOf(_model.Terms, term);
        return at < 0 ? at : at + (component == SurveyComponent.Vertical ? Terms.Count : 0);
    }

    private Matrix<double> Rows(Length x, Length y)
    {
        double[] row = _model.Row(Bed, x.Millimetres, y.Millimetres);
        return Matrix<double>.Build.Dense(2, 2 * row.Length, (i, j) => j / row.Length == i ? row[j % row.Length] : 0);
    }

    private Covariance2 Covariance2Of(Matrix<double> rows) => (rows * Covariance.TransposeAndMultiply(rows)).Points();
}
