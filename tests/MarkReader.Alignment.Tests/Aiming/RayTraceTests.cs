using System.Numerics;
using CsCheck;
using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Aiming;

/// <summary>
/// The law of reflection, r = k − 2(k·n)n, as the check of the aim point and of the incidence angle: a 45° source mirror is
/// turned, its reflected ray is followed to a tape standing at an angle, and the aim is the place that the ray of the
/// straightened mirror meets.
/// </summary>
public sealed class RayTraceTests
{
    // Sideways place of the rail's tape origin against the straightened beam, mm.
    private const double OriginX = -1.7, OriginY = 2.3;

    /// <summary>A mirror turned by α about the normal of the plane of incidence turns the beam by 2α: at 1000 mm 10 mrad give 20.00266709 mm.</summary>
    [Fact]
    public void A_turn_of_10_mrad_walks_the_mark_by_L_tan_2_alpha()
    {
        Ray ray = Ray.FromMirror(turnInPlane: 0.010, turnAcross: 0);
        Assert.Equal(20.00266709, Math.Abs(ray.OnTape(1000, 0).U - ray.OnTape(0, 0).U), 1e-7);
    }

    /// <summary>A turn about the axis in the mirror's face and in the plane of incidence turns the beam by √2·α: 14.14296063 mm.</summary>
    [Fact]
    public void A_turn_about_the_axis_in_the_mirror_s_face_walks_the_mark_out_of_the_plane_by_about_root_2()
    {
        Ray ray = Ray.FromMirror(turnInPlane: 0, turnAcross: 0.010);
        Assert.Equal(14.14296063, ray.OnTape(1000, 0).DistanceTo(ray.OnTape(0, 0)), 1e-7);
        Assert.Equal(14.1426, Math.Abs(ray.OnTape(1000, 0).V - ray.OnTape(0, 0).V), 1e-4);
    }

    [Fact]
    public void Aim_from_two_traced_marks_is_where_the_straightened_ray_meets_the_tape() =>
        Gen.Select(Gen.Double[-0.02, 0.02], Gen.Double[-0.02, 0.02], Gen.Double[-70, 70], Gen.Double[40, 200], Gen.Double[100, 1500])
            .Sample((inPlane, across, incidence, near, travel) =>
            {
                Ray turned = Ray.FromMirror(inPlane, across);
                CardPoint straight = Ray.FromMirror(0, 0).OnTape(near, incidence);
                AimSolution solution = AimSolver.Solve(
                    Some.Leg(incidence), [Mark(turned, near, incidence), Mark(turned, near + travel, incidence)]).ValueOrThrow();
                return solution.Aim.Point.DistanceTo(straight) < 1e-8
                    && Math.Abs(solution.Slope.U - (1000 * turned.Direction.X / turned.Direction.Z)) < 1e-7
                    && Math.Abs(solution.Slope.V - (1000 * turned.Direction.Y / turned.Direction.Z)) < 1e-7;
            });

    [Fact]
    public void Leaving_out_the_incidence_angle_puts_the_slope_and_the_aim_wrong()
    {
        Ray turned = Ray.FromMirror(0.01, 0);
        Observation[] marks = [Mark(turned, 80, 45), Mark(turned, 480, 45)];
        CardPoint straight = Ray.FromMirror(0, 0).OnTape(80, 45);
        Assert.True(AimSolver.Solve(Leg.Square, marks).ValueOrThrow().Aim.Point.DistanceTo(straight) > 0.01);
        double tilted = AimSolver.Solve(Some.Leg(45), marks).ValueOrThrow().Slope.U;
        Assert.Equal(Math.Sqrt(2), AimSolver.Solve(Leg.Square, marks).ValueOrThrow().Slope.U / tilted, 0.05);
    }

    /// <summary>A frame that pivots at the mirror's edge, d from the reflecting point in the plane of incidence: k = ±d/√2.</summary>
    [Theory]
    [InlineData(15)]
    [InlineData(-15)]
    public void Two_rounds_with_different_screw_settings_cross_at_the_pivot_offset_of_an_edge_pivot(double edge)
    {
        // The lines of two settings meet where both rays have the same offset: z = −k.
        Ray one = Ray.FromMirror(0.0005, 0, edge), other = Ray.FromMirror(-0.0005, 0, edge);
        double Gap(double z) => one.OnTape(z, 0).U - other.OnTape(z, 0).U;
        double crossing = -100 * Gap(0) / (Gap(100) - Gap(0));
        Assert.Equal(Math.Abs(edge) / Math.Sqrt(2), Math.Abs(crossing), 0.05);

        Leg leg = Some.Leg(pivot: -crossing);
        CardPoint aim = AimSolver.Solve(leg, [Mark(one, 80, 0), Mark(one, 480, 0)]).ValueOrThrow().Aim.Point;
        Assert.True(aim.DistanceTo(Ray.FromMirror(0, 0).OnTape(80, 0)) < 0.001);
        CardPoint without = AimSolver.Solve(Leg.Square, [Mark(one, 80, 0), Mark(one, 480, 0)]).ValueOrThrow().Aim.Point;
        Assert.True(without.DistanceTo(Ray.FromMirror(0, 0).OnTape(80, 0)) > 0.005);
    }

    private static Observation Mark(Ray ray, double path, double incidence) => new(Some.Station(path), new(ray.OnTape(path, incidence), Covariance2.Isotropic(0.01)));

    private sealed record Ray(Vec Origin, Vec Direction)
    {
        /// <summary>
        /// The beam comes along +x and is turned to +z (the rail) by a mirror whose face holds the y axis. The mirror turns about
        /// the y axis (in plane) and about the axis of its face in the plane of incidence (across), through a pivot on its face
        /// <paramref name="edge"/> mm from the reflecting point.
        /// </summary>
        public static Ray FromMirror(double turnInPlane, double turnAcross, double edge = 0)
        {
            Vec normal = new(-Math.Sqrt(0.5), 0, Math.Sqrt(0.5));
            Vec face = new(Math.Sqrt(0.5), 0, Math.Sqrt(0.5));
            Vec pivot = edge * face;
            Vec n = normal.Turn(new(0, 1, 0), turnInPlane).Turn(face, turnAcross);
            Vec beam = new(1, 0, 0);
            // The incoming ray runs along the x axis; the turned face still holds the pivot.
            double x = pivot.Dot(n) / beam.Dot(n);
            Vec reflected = beam - (2 * beam.Dot(n) * n);
            return new(x * beam, reflected);
        }

        /// <summary>Where the ray meets the tape of a carriage at this path length.</summary>
        public CardPoint OnTape(double path, double incidenceDegrees)
        {
            (double sin, double cos) = Math.SinCos(incidenceDegrees * Math.PI / 180);
            Vec eu = new(cos, 0, sin), ev = new(0, 1, 0), centre = new(OriginX, OriginY, path);
            Vec normal = eu.Cross(ev);
            double t = (centre - Origin).Dot(normal) / Direction.Dot(normal);
            Vec hit = Origin + (t * Direction) - centre;
            return new(hit.Dot(eu), hit.Dot(ev));
        }
    }

    private readonly record struct Vec(double X, double Y, double Z) :
        IAdditionOperators<Vec, Vec, Vec>, ISubtractionOperators<Vec, Vec, Vec>
    {
        public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

        public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

        public static Vec operator *(double f, Vec a) => new(f * a.X, f * a.Y, f * a.Z);

        public double Dot(Vec b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

        public Vec Cross(Vec b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

        /// <summary>Rotation about a unit axis (Rodrigues).</summary>
        public Vec Turn(Vec axis, double angle)
        {
            (double sin, double cos) = Math.SinCos(angle);
            return (cos * this) + (sin * axis.Cross(this)) + ((1 - cos) * axis.Dot(this) * axis);
        }
    }
}
