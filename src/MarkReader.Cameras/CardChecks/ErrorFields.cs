using MarkReader.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.CardChecks;

/// <summary>From a card's shape to the errors of the marks on it: law of propagation, derivatives by differences.</summary>
/// <remarks>
/// The largest error is below a limit when it is at every place, each at the stated confidence (intersection–union test: Berger, Technometrics 24, 1982). It is
/// above when at some place it is, at a confidence for all places together (Scheffé, Biometrika 40, 1953).
/// </remarks>
internal sealed class ErrorFields(PrintedSection[] sections, double half, double zone, Length distance)
{
    private const int Sides = 8;

    /// <param name="rulers">What the readings are corrected by; null for nothing.</param>
    /// <param name="scaled">Whether the print's mean scale is judged.</param>
    public ErrorField Of(CardShape card, RulerScale? rulers, bool scaled)
    {
        CardPoint[] places = Places();
        Seen straight = Look(card, Angle.Zero, Angle.Zero, places, rulers);
        Seen[] all = [straight, .. Enumerable.Range(0, Sides).Select(k => Look(card, ErrorField.SideTilt, Angle.FromDegrees(360.0 * k / Sides), places, rulers))];
        ErrorPlace[] every = [.. all.SelectMany(s => s.Places)];
        ErrorPlace[] worsts = [.. places.Select((_, i) => all.Select(s => s.Places[i]).MaxBy(p => p.Error.Magnitude)!)];
        // Faults of edges act through the homography alone.
        int ways = (scaled ? CardShape.First : CardShape.First - 1) + (card.Groups.Count > 0 ? FlatReading.Homography : 0);
        double together = Math.Sqrt(ChiSquared.InvCDF(ways, 0.95)), each = Math.Sqrt(Covariance2.ChiSquare95);
        double least = every.Max(p => p.Error.Magnitude - (together * p.StandardUncertainty.Millimetres));
        double most = every.Max(p => p.Error.Magnitude + p.Covariance.Ellipse(each).SemiMajor);
        (double rms, double uncertainty) = Rms(straight, card.Covariance);
        return new(
            straight.Places, worsts, every.MaxBy(p => p.Error.Magnitude)!, Length.FromMillimetres(rms), Length.FromMillimetres(uncertainty),
            Length.FromMillimetres(Math.Max(0, least)), Length.FromMillimetres(most));
    }

    /// <summary>The largest error in a photo from above or from any side, without its uncertainty.</summary>
    public Length Largest(CardShape card)
    {
        CardPoint[] places = Places();
        IEnumerable<Sight> sights = [new(Angle.Zero, Angle.Zero, distance), .. Enumerable.Range(0, Sides).Select(k => new Sight(ErrorField.SideTilt, Angle.FromDegrees(360.0 * k / Sides), distance))];
        return Length.FromMillimetres(sights.Max(s => new FlatReading(sections, half, s).View(card.Shape, card.Scale, card.Faults, places).Read.Zip(places, (r, p) => (r - p).Magnitude).Max()));
    }

    private CardPoint[] Places() => [.. from j in Enumerable.Range(0, ErrorField.Side) from i in Enumerable.Range(0, ErrorField.Side)
        select new CardPoint(zone * ((i / (ErrorField.Side - 1.0)) - 0.5), zone * ((j / (ErrorField.Side - 1.0)) - 0.5))];

    private Seen Look(CardShape card, Angle tilt, Angle towards, CardPoint[] places, RulerScale? rulers)
    {
        FlatReading reading = new(sections, half, new(tilt, towards, distance));
        FlatView view = View(card);
        int n = card.Covariance.RowCount;
        Matrix<double> slopes = Matrix<double>.Build.Dense(2 * places.Length, n);
        double[] steps = [1e-5, 1e-5, 1e-5, 0.1, 0.1, 0.1];
        for (int k = 0; k < steps.Length; k++)
        {
            if (card.Covariance[k, k] <= 0)
                continue;
            Vector<double> d = Vector<double>.Build.Dense(n);
            d[k] = steps[k];
            (FlatView up, FlatView down) = (View(card.Moved(d)), View(card.Moved(-d)));
            for (int i = 0; i < places.Length; i++)
            {
                CardVector by = 1 / (2 * steps[k]) * (up.Read[i] - down.Read[i]);
                (slopes[2 * i, k], slopes[(2 * i) + 1, k]) = (by.U, by.V);
            }
        }

        for (int i = 0; i < places.Length; i++)
        {
            (double[] U, double[] V) elements = view.ByElements(view.Read[i]);
            for (int f = 0; f < card.Groups.Count; f++)
            {
                CardVector by = view.ByFault(card.Groups[f], elements);
                (slopes[2 * i, CardShape.First + f], slopes[(2 * i) + 1, CardShape.First + f]) = (by.U, by.V);
            }
        }

        (double cu, double cv) = (rulers?.U ?? 1, rulers?.V ?? 1);
        for (int i = 0; i < places.Length; i++)
        {
            for (int k = 0; k < n; k++)
                (slopes[2 * i, k], slopes[(2 * i) + 1, k]) = (cu * slopes[2 * i, k], cv * slopes[(2 * i) + 1, k]);
        }

        Matrix<double> carried = slopes * card.Covariance;
        return new(slopes, [.. places.Select((p, i) => new ErrorPlace(
            p,
            new CardPoint(cu * view.Read[i].U, cv * view.Read[i].V) - p,
            Covariance(carried.Row(2 * i), carried.Row((2 * i) + 1), slopes.Row(2 * i), slopes.Row((2 * i) + 1)),
            tilt))]);

        FlatView View(CardShape c) => reading.View(c.Shape, c.Scale, c.Faults, places);
    }

    private static Covariance2 Covariance(Vector<double> carriedU, Vector<double> carriedV, Vector<double> u, Vector<double> v)
    {
        (double uu, double uv, double vv) = (Math.Max(0, carriedU * u), carriedU * v, Math.Max(0, carriedV * v));
        double most = Math.Sqrt(uu * vv);
        return new(uu, Math.Clamp(uv, -most, most), vv);
    }

    private static (double Rms, double Uncertainty) Rms(Seen seen, Matrix<double> covariance)
    {
        double rms = Math.Sqrt(seen.Places.Average(p => p.Error.Magnitude * p.Error.Magnitude));
        if (rms == 0)
            return (0, Math.Sqrt(seen.Places.Average(p => p.Covariance.Uu + p.Covariance.Vv)));
        Vector<double> errors = Vector<double>.Build.DenseOfEnumerable(seen.Places.SelectMany(p => new[] { p.Error.U, p.Error.V }));
        Vector<double> by = seen.Slopes.TransposeThisAndMultiply(errors) / (seen.Places.Count * rms);
        return (rms, Math.Sqrt(Math.Max(0, by * (covariance * by))));
    }

    /// <param name="Slopes">Errors by the card's parameters, u and v of each place in turn.</param>
    private sealed record Seen(Matrix<double> Slopes, IReadOnlyList<ErrorPlace> Places);
}
