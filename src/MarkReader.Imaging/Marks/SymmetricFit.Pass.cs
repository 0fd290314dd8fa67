using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Marks;

/// <summary>One step of the fit: the profile about a form, the residuals, and what follows from them.</summary>
internal sealed partial class SymmetricFit
{
    /// <summary>Centre, shape and plane at one step of the fit.</summary>
    private sealed record MarkForm(CardPoint Centre, EllipticShape Shape, double Gu, double Gv)
    {
        public double E1 => Shape.E1;

        public double E2 => Shape.E2;

        public MarkForm Moved(Vector<double> s) => new(new(Centre.U + s[0], Centre.V + s[1]), new(E1 + s[2], E2 + s[3]), Gu + s[4], Gv + s[5]);
    }

    /// <summary>The profile, residuals and weights about one form.</summary>
    private sealed class Pass
    {
        private readonly SymmetricFit _fit;
        private readonly MarkForm _form;
        private readonly double[] _r;
        private readonly int[] _bin;
        private readonly double[] _weight;
        private readonly double[] _residual;
        private readonly double[] _profile;
        private readonly double[] _spread;
        private readonly int _bins;

        public Pass(SymmetricFit fit, MarkForm form)
        {
            _fit = fit;
            _form = form;
            int n = fit._d.Length;
            _bins = (int)(fit._window / fit._binWidth);
            _r = new double[n];
            _bin = new int[n];
            _weight = new double[n];
            _residual = new double[n];
            for (int i = 0; i < n; i++)
            {
                _r[i] = form.Shape.Radius(fit._u[i] - form.Centre.U, fit._v[i] - form.Centre.V);
                int bin = (int)(_r[i] / fit._binWidth);
                _bin[i] = bin < _bins ? bin : -1;
            }

            (_profile, _spread) = Profile();
            for (int i = 0; i < n; i++)
                _residual[i] = _bin[i] < 0 ? 0 : Flat(i) - At(_profile, _r[i]);
        }

        public void Weigh(bool robust)
        {
            for (int i = 0; i < _weight.Length; i++)
            {
                if (_bin[i] < 0)
                {
                    _weight[i] = 0;
                    continue;
                }

                double t = robust ? _residual[i] / (Tukey * Math.Max(At(_spread, _r[i]), 1e-4)) : 0;
                _weight[i] = Math.Abs(t) < 1 ? Square(1 - (t * t)) : 0;
            }
        }

        /// <summary>The Gauss–Newton step, or null when the pixels do not determine it.</summary>
        public Vector<double>? Step()
        {
            (Matrix<double> normal, Vector<double> right, _, _) = Normal();
            // A little damping keeps a nearly flat spot from running away.
            for (int k = 2; k < Parameters; k++)
                normal[k, k] *= 1 + 1e-6;
            Vector<double> step = normal.LU().Solve(right);
            return step.All(double.IsFinite) ? step : null;
        }

        /// <summary>What the fit comes to; null when it shows no mark.</summary>
        public SymmetricMark? Finish(ZoneMap darkening)
        {
            double floor = Floor();
            double depth = _profile.Max() - floor;
            if (!(depth > 0) || HalfDepthRadius(floor, depth) is not { } radius || Covariance(darkening.Grid) is not var (covariance, influence))
                return null;
            return new(
                _form.Centre,
                covariance,
                influence,
                2 * radius,
                EdgeRadius(radius),
                _form.Shape,
                depth,
                EdgeWidth(EdgeRadius(radius), depth),
                Roughness(radius) / depth,
                Sides(radius, depth),
                Model(darkening, HaloReach(2 * radius)));
        }

        /// <summary>
        /// The centre's covariance, clustered by pairs of opposite sectors (Liang and Zeger, Biometrika 73, 1986): texture within a pair counts as
        /// one; and what each pixel does to the centre.
        /// </summary>
        private (Covariance2, CentreInfluence)? Covariance(ZoneGrid grid)
        {
            (Matrix<double> normal, _, Vector<double>[] scores, double[] weightedRows) = Normal();
            Matrix<double> inverse = normal.Inverse();
            Matrix<double> meat = Matrix<double>.Build.Dense(Parameters, Parameters);
            const int Pairs = Sectors / 2;
            for (int k = 0; k < Pairs; k++)
            {
                Vector<double> s = scores[k] + scores[k + Pairs];
                meat += s.OuterProduct(s);
            }

            Matrix<double> c = inverse * (meat * (Pairs / (Pairs - 1.0))) * inverse;
            if (!c.Enumerate().All(double.IsFinite) || !(c[0, 0] > 0) || !(c[1, 1] > 0))
                return null;
            List<(int, int, double, double)> influence = [];
            for (int i = 0; i < _r.Length; i++)
            {
                if (_weight[i] <= 0)
                    continue;
                double u = 0, v = 0;
                for (int k = 0; k < Parameters; k++)
                    (u, v) = (u + (inverse[0, k] * weightedRows[(i * Parameters) + k]), v + (inverse[1, k] * weightedRows[(i * Parameters) + k]));
                (double x, double y) = grid.ToPixel(new(_fit._u[i], _fit._v[i]));
                // Texture lies under the burn: where that leaves little light it shows little.
                double bare = Math.Clamp(1 - _fit._d[i], 0, 1);
                influence.Add(((int)Math.Round(x), (int)Math.Round(y), bare * u, bare * v));
            }

            return (new Covariance2(c[0, 0], c[0, 1], c[1, 1]), new CentreInfluence(grid, influence));
        }

        /// <summary>The model with rings out to <paramref name="reach"/> mm, for dividing the whole halo out.</summary>
        private MarkModel Model(ZoneMap darkening, double reach)
        {
            SymmetricFit wide = new(Collect(darkening, _form.Centre, reach), reach, _fit._binWidth);
            Pass pass = new(wide, _form with { Gu = 0, Gv = 0 });
            return new(_form.Centre, _form.Shape, pass._profile, _fit._binWidth, pass.Floor());
        }

        /// <summary>Darkening of the surroundings: the outermost rings.</summary>
        private double Floor() => _profile[^Math.Max(1, _bins / 8)..].Average();

        /// <summary>Normal equations with the profile projected out, what each sector adds to the right side, and each pixel's row times its weight.</summary>
        private (Matrix<double> Normal, Vector<double> Right, Vector<double>[] SectorScores, double[] WeightedRows) Normal()
        {
            int n = _r.Length;
            double[,] j = new double[n, Parameters];
            double[,] mean = new double[_bins, Parameters];
            double[] total = new double[_bins];
            double root2 = 1 - Square(_form.E1) - Square(_form.E2);
            double root = Math.Sqrt(root2);
            for (int i = 0; i < n; i++)
            {
                if (_weight[i] <= 0)
                    continue;
                double du = _fit._u[i] - _form.Centre.U, dv = _fit._v[i] - _form.Centre.V;
                double r = Math.Max(_r[i], 1e-6);
                double slope = Slope(_r[i]);
                j[i, 0] = -slope * (((1 + _form.E1) * du) + (_form.E2 * dv)) / (r * root);
                j[i, 1] = -slope * ((_form.E2 * du) + ((1 - _form.E1) * dv)) / (r * root);
                j[i, 2] = slope * ((((du * du) - (dv * dv)) / root) + (r * r * _form.E1 / root2)) / (2 * r);
                j[i, 3] = slope * ((2 * du * dv / root) + (r * r * _form.E2 / root2)) / (2 * r);
                j[i, 4] = du;
                j[i, 5] = dv;
                int bin = _bin[i];
                total[bin] += _weight[i];
                for (int k = 0; k < Parameters; k++)
                    mean[bin, k] += _weight[i] * j[i, k];
            }

            Matrix<double> normal = Matrix<double>.Build.Dense(Parameters, Parameters);
            Vector<double> right = Vector<double>.Build.Dense(Parameters);
            Vector<double>[] scores = [.. Enumerable.Range(0, Sectors).Select(_ => Vector<double>.Build.Dense(Parameters))];
            double[] weighted = new double[n * Parameters];
            double[] row = new double[Parameters];
            for (int i = 0; i < n; i++)
            {
                if (_weight[i] <= 0)
                    continue;
                int bin = _bin[i];
                Vector<double> score = scores[Sector(i)];
                for (int k = 0; k < Parameters; k++)
                    row[k] = j[i, k] - (mean[bin, k] / total[bin]);
                for (int k = 0; k < Parameters; k++)
                {
                    double wk = _weight[i] * row[k];
                    weighted[(i * Parameters) + k] = wk;
                    right[k] += wk * _residual[i];
                    score[k] += wk * _residual[i];
                    for (int l = 0; l < Parameters; l++)
                        normal[k, l] += wk * row[l];
                }
            }

            return (normal, right, scores, weighted);
        }

        private double Flat(int i) => _fit._d[i] - (_form.Gu * (_fit._u[i] - _form.Centre.U)) - (_form.Gv * (_fit._v[i] - _form.Centre.V));

        /// <summary>Median darkening and robust spread in every ring; an empty ring takes its neighbour's values.</summary>
        private (double[] Profile, double[] Spread) Profile()
        {
            List<double>[] rings = [.. Enumerable.Range(0, _bins).Select(_ => new List<double>())];
            for (int i = 0; i < _bin.Length; i++)
            {
                if (_bin[i] >= 0)
                    rings[_bin[i]].Add(Flat(i));
            }

            double[] profile = new double[_bins];
            double[] spread = new double[_bins];
            int previous = -1;
            for (int b = 0; b < _bins; b++)
            {
                if (rings[b].Count == 0)
                {
                    (profile[b], spread[b]) = previous >= 0 ? (profile[previous], spread[previous]) : (0, 0);
                    continue;
                }

                double[] values = [.. rings[b]];
                Array.Sort(values);
                double median = MeanOfMiddle(values);
                for (int i = 0; i < values.Length; i++)
                    values[i] = Math.Abs(values[i] - median);
                Array.Sort(values);
                profile[b] = median;
                spread[b] = 1.4826 * values[values.Length / 2];
                previous = b;
            }

            for (int b = 0; b < _bins && rings[b].Count == 0; b++)
                (profile[b], spread[b]) = (profile[Array.FindIndex(rings, r => r.Count > 0)], spread[Array.FindIndex(rings, r => r.Count > 0)]);
            return (profile, Smooth(spread));
        }

        /// <summary>Mean of the middle half: nearly as robust as the median, with less noise.</summary>
        private static double MeanOfMiddle(double[] sorted)
        {
            int cut = sorted.Length / 4;
            double sum = 0;
            for (int i = cut; i < sorted.Length - cut; i++)
                sum += sorted[i];
            return sum / (sorted.Length - (2 * cut));
        }

        private static double[] Smooth(double[] values)
        {
            double[] result = new double[values.Length];
            for (int i = 0; i < values.Length; i++)
                result[i] = (values[Math.Max(0, i - 1)] + (2 * values[i]) + values[Math.Min(values.Length - 1, i + 1)]) / 4;
            return result;
        }

        private double At(double[] values, double r)
        {
            double x = (r / _fit._binWidth) - 0.5;
            int i = Math.Clamp((int)Math.Floor(x), 0, _bins - 2);
            double t = Math.Clamp(x - i, 0, 1);
            return values[i] + (t * (values[i + 1] - values[i]));
        }

        private double Slope(double r)
        {
            double w = _fit._binWidth;
            double low = Math.Max(0, r - w);
            return (At(_profile, r + w) - At(_profile, low)) / (r + w - low);
        }

        /// <summary>Outermost radius at half depth: a ring and a hole count to their outer edge.</summary>
        private double? HalfDepthRadius(double floor, double depth)
        {
            double level = floor + (depth / 2);
            for (int b = _bins - 2; b >= 0; b--)
            {
                if (_profile[b] >= level && _profile[b + 1] < level)
                    return (b + 0.5 + ((_profile[b] - level) / (_profile[b] - _profile[b + 1]))) * _fit._binWidth;
            }

            return null;
        }

        /// <summary>Radius of the steepest fall: of a burn with a halo, the burn's own edge. The outermost where several are nearly as steep.</summary>
        private double EdgeRadius(double radius)
        {
            int from = (int)(0.4 * radius / _fit._binWidth), to = Math.Min(_bins - 2, (int)(1.5 * radius / _fit._binWidth));
            double[] fall = [.. Enumerable.Range(0, _bins - 1).Select(b => b < from || b > to ? 0 : -Slope((b + 0.5) * _fit._binWidth))];
            double steepest = fall.Max();
            int at = Array.FindLastIndex(fall, f => f >= 0.75 * steepest);
            // The top of that fall.
            while (at > from && fall[at - 1] > fall[at])
                at--;
            return steepest > 0 ? (at + 0.5) * _fit._binWidth : radius;
        }

        /// <summary>Depth over steepest slope at the edge, as the standard deviation of a blurred step.</summary>
        private double EdgeWidth(double radius, double depth)
        {
            double steepest = Enumerable.Range(-3, 7).Max(k => -Slope(Math.Max(0, radius + (k * _fit._binWidth))));
            return steepest > 0 ? depth / (steepest * Math.Sqrt(2 * Math.PI)) : radius;
        }

        /// <summary>Part of the sectors in which the darkening falls from inside to outside the edge by a third of the depth or more.</summary>
        private double Sides(double radius, double depth)
        {
            double[] inside = new double[Sectors], outside = new double[Sectors];
            int[] insideCount = new int[Sectors], outsideCount = new int[Sectors];
            for (int i = 0; i < _r.Length; i++)
            {
                double t = _r[i] / radius;
                if (t is < 0.6 or > 1.6 or (> 0.95 and < 1.15))
                    continue;
                int sector = Sector(i);
                if (t < 1)
                    (inside[sector], insideCount[sector]) = (inside[sector] + _fit._d[i], insideCount[sector] + 1);
                else
                    (outside[sector], outsideCount[sector]) = (outside[sector] + _fit._d[i], outsideCount[sector] + 1);
            }

            int falling = 0;
            for (int s = 0; s < Sectors; s++)
            {
                if (insideCount[s] == 0 || outsideCount[s] == 0)
                    continue;
                if ((inside[s] / insideCount[s]) - (outside[s] / outsideCount[s]) > depth / 3)
                    falling++;
            }

            return (double)falling / Sectors;
        }

        private int Sector(int i)
        {
            double angle = Math.Atan2(_fit._v[i] - _form.Centre.V, _fit._u[i] - _form.Centre.U);
            return Math.Clamp((int)((angle + Math.PI) / (2 * Math.PI) * Sectors), 0, Sectors - 1);
        }

        /// <summary>Root mean square residual, all pixels alike, from just outside the edge inwards.</summary>
        private double Roughness(double radius)
        {
            double sum = 0;
            int count = 0;
            for (int i = 0; i < _r.Length; i++)
            {
                if (_bin[i] < 0 || _r[i] > 1.15 * radius)
                    continue;
                sum += Square(_residual[i]);
                count++;
            }

            return count > 0 ? Math.Sqrt(sum / count) : 0;
        }
    }
}
