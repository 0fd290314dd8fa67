using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Models;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Cameras.Profiles;

/// <summary>How far a calibration may misplace what a photo of a plane shows: the part of its uncertainty that no homography takes up.</summary>
internal static class LensDoubt
{
    private const int Fields = 8;

    /// <summary>The largest standard uncertainty over the photo, px.</summary>
    /// <param name="covariance">Of fx, fy, cx, cy, k1, k2, k3, p1, p2, as in <see cref="CalibratedCamera.Names"/>.</param>
    public static double Largest(CameraModel camera, Matrix<double> covariance)
    {
        PixelPoint[] grid = [.. from i in Enumerable.Range(0, Fields + 1) from j in Enumerable.Range(0, Fields + 1)
            select new PixelPoint(camera.Photo.Width * i / (double)Fields, camera.Photo.Height * j / (double)Fields)];
        Matrix<double> slopes = Matrix<double>.Build.Dense(2 * grid.Length, CameraProfile.Parameters);
        for (int k = 0; k < CameraProfile.Parameters; k++)
        {
            double step = Math.Max(1e-9, 0.1 * Math.Sqrt(covariance[k, k]));
            (CameraModel up, CameraModel down) = (Moved(camera, k, step), Moved(camera, k, -step));
            for (int i = 0; i < grid.Length; i++)
            {
                PixelVector slope = 1 / (2 * step) * (up.Ideal(grid[i]) - down.Ideal(grid[i]));
                (slopes[2 * i, k], slopes[(2 * i) + 1, k]) = (slope.X, slope.Y);
            }
        }

        Matrix<double> homography = Homography(grid, camera);
        Matrix<double> left = slopes - (homography * homography.QR().Solve(slopes));
        Matrix<double> places = left * covariance * left.Transpose();
        double largest = Enumerable.Range(0, grid.Length).Max(i => places[2 * i, 2 * i] + places[(2 * i) + 1, (2 * i) + 1]);
        return Math.Sqrt(Math.Max(0, largest));
    }

    /// <summary>Derivatives of a homography's eight elements at the identity, in coordinates about the middle.</summary>
    private static Matrix<double> Homography(PixelPoint[] grid, CameraModel camera)
    {
        Matrix<double> m = Matrix<double>.Build.Dense(2 * grid.Length, 8);
        for (int i = 0; i < grid.Length; i++)
        {
            (double x, double y) = ((grid[i].X - camera.Principal.X) / camera.FocalX, (grid[i].Y - camera.Principal.Y) / camera.FocalY);
            m.SetRow(2 * i, [x, y, 1, 0, 0, 0, x * x, x * y]);
            m.SetRow((2 * i) + 1, [0, 0, 0, x, y, 1, x * y, y * y]);
        }

        return m;
    }

    private static CameraModel Moved(CameraModel c, int k, double d) => k switch
    {
        0 => c with { FocalX = c.FocalX + d },
        1 => c with { FocalY = c.FocalY + d },
        2 => c with { Principal = new(c.Principal.X + d, c.Principal.Y) },
        3 => c with { Principal = new(c.Principal.X, c.Principal.Y + d) },
        4 => c with { Lens = c.Lens with { K1 = c.Lens.K1 + d } },
        5 => c with { Lens = c.Lens with { K2 = c.Lens.K2 + d } },
        6 => c with { Lens = c.Lens with { K3 = c.Lens.K3 + d } },
        7 => c with { Lens = c.Lens with { P1 = c.Lens.P1 + d } },
        _ => c with { Lens = c.Lens with { P2 = c.Lens.P2 + d } },
    };
}
