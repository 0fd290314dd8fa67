using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.Survey;

/// <summary>A term of the survey, for each component of the mark. With s = x/X and t = y/Y over the travels, all coefficients are in mm.</summary>
public enum SurveyTerm
{
    /// <summary>b0: the mark at the near left corner.</summary>
    Place,

    /// <summary>s: the walk over the head's travel along the gantry's near end; bx = coefficient/X.</summary>
    OverHeadTravel,

    /// <summary>t: the walk over the gantry's travel along the left side; by = coefficient/Y.</summary>
    OverGantryTravel,

    /// <summary>s·t: of the vertical component, twist; bxy = coefficient/(X·Y).</summary>
    Twist,

    /// <summary>s·(s − 1), zero at both ends: a bent head rail; the bow in the middle is −1/4 of it.</summary>
    HeadBow,

    /// <summary>t·(t − 1): a bent gantry rail.</summary>
    GantryBow,
}

/// <summary>Which terms a survey's places determine, and their values at a place.</summary>
internal sealed class SurveyModel
{
    private static readonly SurveyTerm[] s_bilinear = [SurveyTerm.Place, SurveyTerm.OverHeadTravel, SurveyTerm.OverGantryTravel, SurveyTerm.Twist];

    // Columns of a design that differ by less than this from depending on each other do.
    private const double LeastIndependence = 0.02;

    private SurveyModel(SurveyTerm[] terms) => Terms = terms;

    public SurveyTerm[] Terms { get; }

    /// <summary>b0 + bx·x + by·y + bxy·x·y, with bows where the places leave a degree of freedom besides; null when they do not determine even the four.</summary>
    public static SurveyModel? For(Bed bed, IReadOnlyList<SurveyMark> marks)
    {
        SurveyModel model = new(s_bilinear);
        if (!model.Determined(bed, marks))
            return null;
        foreach (SurveyTerm bow in new[] { SurveyTerm.HeadBow, SurveyTerm.GantryBow })
        {
            SurveyModel more = new([.. model.Terms, bow]);
            if (marks.Count > more.Terms.Length && more.Determined(bed, marks))
                model = more;
        }

        return model;
    }

    public double[] Row(Bed bed, double x, double y)
    {
        double s = x / bed.X.Millimetres, t = y / bed.Y.Millimetres;
        return
        [
            .. Terms.Select(term => term switch
            {
                SurveyTerm.Place => 1,
                SurveyTerm.OverHeadTravel => s,
                SurveyTerm.OverGantryTravel => t,
                SurveyTerm.Twist => s * t,
                SurveyTerm.HeadBow => s * (s - 1),
                _ => t * (t - 1),
            }),
        ];
    }

    private bool Determined(Bed bed, IReadOnlyList<SurveyMark> marks)
    {
        if (marks.Count < Terms.Length)
            return false;
        Matrix<double> design = Matrix<double>.Build.DenseOfRowArrays(marks.Select(m => Row(bed, m.X.Millimetres, m.Y.Millimetres)));
        Vector<double> norms = design.ColumnNorms(2);
        if (norms.Any(n => n == 0))
            return false;
        // Of unit columns, so that the number of marks does not count.
        Vector<double> singular = design.MapIndexed((_, j, value) => value / norms[j]).Svd(computeVectors: false).S;
        return singular[^1] > LeastIndependence;
    }
}
