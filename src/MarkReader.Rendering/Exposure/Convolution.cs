using System.Numerics;
using System.Runtime.CompilerServices;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Exposure;

/// <summary>Blur in linear light by kernels that are symmetric about their middle, so that no point moves.</summary>
internal static class Convolution
{
    public static void Apply(LinearImage image, SensorSpec sensor)
    {
        if (sensor.MotionLength > 0)
            Run(image, Motion(sensor.MotionLength, sensor.MotionDegrees));
        if (sensor.DefocusRadius > 0)
            Run(image, Disc(sensor.DefocusRadius));
        if (sensor.LensSigma > 0)
            Gaussian(image, sensor.LensSigma);
    }

    /// <summary>Gaussian blur, along rows and then across them.</summary>
    public static void Gaussian(LinearImage image, double sigma)
    {
        int reach = (int)Math.Ceiling(3.5 * sigma);
        float[,] along = Build(reach, 1, (x, y) => y == 0 ? Math.Exp(-(x * x) / (2 * sigma * sigma)) : 0);
        float[,] across = Build(reach, 1, (x, y) => x == 0 ? Math.Exp(-(y * y) / (2 * sigma * sigma)) : 0);
        Run(image, along);
        Run(image, across);
    }

    private static float[,] Disc(double radius) =>
        Build((int)Math.Ceiling(radius), 15, (x, y) => (x * x) + (y * y) <= radius * radius ? 1 : 0);

    /// <summary>A straight path, swept by a square pixel's bilinear footprint.</summary>
    private static float[,] Motion(double length, double degrees)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        int reach = (int)Math.Ceiling((length / 2) + 1);
        return Build(reach, 1, (x, y) =>
        {
            double sum = 0;
            for (int i = 0; i < 200; i++)
            {
                double s = (((i + 0.5) / 200) - 0.5) * length;
                sum += Math.Max(0, 1 - Math.Abs(x - (s * cos))) * Math.Max(0, 1 - Math.Abs(y - (s * sin)));
            }

            return sum;
        });
    }

    private static float[,] Build(int reach, int samples, Func<double, double, double> weight)
    {
        int side = (2 * reach) + 1;
        double[,] sums = new double[side, side];
        double total = 0;
        for (int j = 0; j < side; j++)
        {
            for (int i = 0; i < side; i++)
            {
                for (int s = 0; s < samples * samples; s++)
                {
                    double x = i - reach + (((s % samples) + 0.5) / samples) - 0.5;
                    double y = j - reach + (((s / samples) + 0.5) / samples) - 0.5;
                    sums[j, i] += weight(x, y);
                }

                total += sums[j, i];
            }
        }

        float[,] kernel = new float[side, side];
        for (int j = 0; j < side; j++)
        {
            for (int i = 0; i < side; i++)
                kernel[j, i] = (float)(sums[j, i] / total);
        }

        return kernel;
    }

    /// <summary>Each row's result is a sum of shifted rows; the picture's border is repeated.</summary>
    public static void Run(LinearImage image, float[,] kernel)
    {
        int reach = kernel.GetLength(0) / 2;
        (int w, int h) = (image.Width, image.Height);
        for (int p = 0; p < image.Planes.Length; p++)
        {
            float[] from = image.Planes[p];
            float[] to = new float[from.Length];
            Parallel.For(0, (h + 31) / 32, strip =>
            {
                int first = strip * 32;
                int last = Math.Min(h, first + 32);
                int padded = w + (2 * reach);
                float[][] rows = [.. Enumerable.Range(first - reach, last - first + (2 * reach)).Select(y => Padded(from, w, Math.Clamp(y, 0, h - 1), reach))];
                for (int y = first; y < last; y++)
                {
                    Span<float> result = to.AsSpan(y * w, w);
                    for (int j = 0; j < kernel.GetLength(0); j++)
                    {
                        ReadOnlySpan<float> row = rows[y - first + j];
                        for (int i = 0; i < kernel.GetLength(1); i++)
                        {
                            if (kernel[j, i] != 0)
                                AddScaled(row.Slice(i, w), kernel[j, i], result);
                        }
                    }
                }
            });
            image.Planes[p] = to;
        }
    }

    private static float[] Padded(float[] plane, int width, int y, int reach)
    {
        float[] row = new float[width + (2 * reach)];
        plane.AsSpan(y * width, width).CopyTo(row.AsSpan(reach));
        Array.Fill(row, row[reach], 0, reach);
        Array.Fill(row, row[reach + width - 1], reach + width, reach);
        return row;
    }

    /// <summary>Adds <paramref name="factor"/> times one row to another.</summary>
    /// <remarks>Compiled in full at once: a program's first picture took seconds longer while this ran in the compiler's quick form.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void AddScaled(ReadOnlySpan<float> from, float factor, Span<float> to)
    {
        int step = Vector<float>.Count;
        int i = 0;
        Vector<float> f = new(factor);
        for (; i <= from.Length - step; i += step)
            (new Vector<float>(to[i..]) + (f * new Vector<float>(from[i..]))).CopyTo(to[i..]);
        for (; i < from.Length; i++)
            to[i] += factor * from[i];
    }

    /// <summary>Sums of a row and those that start <paramref name="shift"/> after each other, by their weights, added up in turn from the first.</summary>
    /// <remarks>Compiled in full at once, as <see cref="AddScaled"/>.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void WeightedSum(ReadOnlySpan<float> from, int shift, ReadOnlySpan<float> weights, Span<float> to)
    {
        int step = Vector<float>.Count;
        int x = 0;
        for (; x <= to.Length - (4 * step); x += 4 * step)
        {
            Vector<float> s0 = default, s1 = default, s2 = default, s3 = default;
            for (int i = 0; i < weights.Length; i++)
            {
                Vector<float> w = new(weights[i]);
                ReadOnlySpan<float> part = from.Slice(x + (i * shift), 4 * step);
                s0 += w * new Vector<float>(part);
                s1 += w * new Vector<float>(part[step..]);
                s2 += w * new Vector<float>(part[(2 * step)..]);
                s3 += w * new Vector<float>(part[(3 * step)..]);
            }

            s0.CopyTo(to[x..]);
            s1.CopyTo(to[(x + step)..]);
            s2.CopyTo(to[(x + (2 * step))..]);
            s3.CopyTo(to[(x + (3 * step))..]);
        }

        for (; x < to.Length; x++)
        {
            float sum = 0;
            for (int i = 0; i < weights.Length; i++)
                sum += weights[i] * from[x + (i * shift)];
            to[x] = sum;
        }
    }
}
