using CsCheck;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Imaging.Tests.Rectification;

public sealed class CardViewTests
{
    private static readonly PhotoSize s_size = new(4032, 3024);

    private static readonly Gen<CardPoint> s_point = Gen.Double[-25, 25].Select(Gen.Double[-25, 25], (u, v) => new CardPoint(u, v));

    /// <summary>Views about 30 px/mm, turned and tilted, with distortion up to what a wide lens shows and a bend up to 1 mm.</summary>
    private static readonly Gen<CardView> s_view = Gen.Select(
        Gen.Double[-Math.PI, Math.PI], Gen.Double[-0.006, 0.006], Gen.Double[-0.006, 0.006], Gen.Double[-0.08, 0.08], Gen.Double[-1, 1].Array[3], View);

    [Fact]
    public void A_point_goes_to_the_photo_and_back() => s_view.Select(s_point).Sample((view, p) =>
        view.ToCard(view.ToPhoto(p)).DistanceTo(p) < 1e-9);

    [Fact]
    public void The_jacobian_is_the_derivative_of_the_map() => s_view.Select(s_point).Sample((view, p) =>
    {
        const double h = 1e-3;
        (double xu, double xv, double yu, double yv) = view.Jacobian(p);
        PixelVector du = view.ToPhoto(new(p.U + h, p.V)) - view.ToPhoto(new(p.U - h, p.V));
        PixelVector dv = view.ToPhoto(new(p.U, p.V + h)) - view.ToPhoto(new(p.U, p.V - h));
        return Near(du.X / (2 * h), xu) && Near(du.Y / (2 * h), yu) && Near(dv.X / (2 * h), xv) && Near(dv.Y / (2 * h), yv);
    });

    [Fact]
    public void The_parameter_jacobian_is_the_derivative_by_each_parameter() => s_view.Select(s_point).Sample((view, p) =>
    {
        (double[] jx, double[] jy) = view.ParameterJacobian(p);
        for (int k = 0; k < ViewParameters.Count; k++)
        {
            // Growth moves edges, not points.
            double h = k == ViewParameters.Growth ? 1 : ViewParameters.DifferenceStep(k) / 4;
            Vector<double> step = Vector<double>.Build.Dense(ViewParameters.Count);
            step[k] = h;
            PixelVector d = view.Moved(step).ToPhoto(p) - view.Moved(-step).ToPhoto(p);
            if (!Near(d.X / (2 * h), jx[k]) || !Near(d.Y / (2 * h), jy[k]))
                return false;
        }

        return true;
    });

    [Fact]
    public void A_view_without_distortion_is_its_homography()
    {
        Homography h = Homography.FromElements(30, 4, 2000, -5, -29, 1400, 0.002, -0.001, 1);
        CardView view = CardView.FromHomography(h, 25, s_size, 1.2);
        foreach (CardPoint p in (CardPoint[])[new(0, 0), new(20, -7), new(-24, 13)])
            Assert.InRange(view.ToPhoto(p).DistanceTo(h.Map(p)), 0, 1e-8);
    }

    private static CardView View(double turn, double a, double b, double k1, double[] bend)
    {
        (double s, double c) = Math.SinCos(turn);
        CardView flat = CardView.FromHomography(Homography.FromElements(30 * c, 30 * s, 2100, 30 * s, -30 * c, 1500, a, b, 1), 25, s_size, 1.2);
        Vector<double> step = Vector<double>.Build.Dense(ViewParameters.Count);
        step[ViewParameters.K1] = k1;
        for (int i = 0; i < 3; i++)
            step[ViewParameters.Bend + i] = bend[i];
        return flat.Moved(step);
    }

    private static bool Near(double expected, double actual) => Math.Abs(expected - actual) <= 1e-5 * Math.Max(1, Math.Abs(expected)) + 1e-4;
}
