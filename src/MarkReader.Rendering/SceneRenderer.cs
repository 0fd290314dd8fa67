using MarkReader.Rendering.Exposure;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Surfaces;

namespace MarkReader.Rendering;

/// <summary>Renders a scene: geometry → albedo → light → blur → sensor.</summary>
public static class SceneRenderer
{
    private const int Samples = 4;
    private const int Strip = 16;

    /// <summary>The picture that the sensor gives, in linear light, upright; <see cref="OutputSpec"/> is left to whoever writes the file.</summary>
    /// <remarks>Equal specs give equal pictures on one machine. Calls may run at the same time; each uses all processors.</remarks>
    public static LinearImage Render(SceneSpec spec)
    {
        ArgumentNullException.ThrowIfNull(spec);
        LinearImage image = Paint(spec, CameraOf(spec));
        Convolution.Apply(image, spec.Sensor);
        Sensor.Expose(image, spec.Sensor, spec.NoiseSeed ?? spec.Seed);
        return image;
    }

    /// <summary>The projection with which a scene is rendered.</summary>
    public static Camera CameraOf(SceneSpec spec) => new(spec.Camera, spec.Pose, spec.Card?.Curvature ?? 0, spec.Card?.CurveDegrees ?? 0);

    private static LinearImage Paint(SceneSpec spec, Camera camera)
    {
        (int w, int h) = (spec.Camera.Width, spec.Camera.Height);
        LinearImage image = new(w, h);
        SceneSurface surface = new(spec);
        Illumination light = new(spec.Light, spec.Camera);
        Parallel.For(0, (h + Strip - 1) / Strip, strip =>
        {
            int first = strip * Strip;
            int last = Math.Min(h, first + Strip);
            (double U, double V)[] above = Corners(camera, w, first - 0.5);
            for (int y = first; y < last; y++)
            {
                (double U, double V)[] below = Corners(camera, w, y + 0.5);
                for (int x = 0; x < w; x++)
                {
                    Quad quad = new(above[x], above[x + 1], below[x], below[x + 1]);
                    (double u, double v) = quad.At(0.5, 0.5);
                    Rgb albedo = surface.IsDetailed(u, v) ? Integrate(surface, quad, spec.TapeHeight, camera) : surface.Target(u, v);
                    (Rgb times, float plus) = light.At(x, y, u, v);
                    int at = (y * w) + x;
                    image.Planes[0][at] = (albedo.R * times.R) + plus;
                    image.Planes[1][at] = (albedo.G * times.G) + plus;
                    image.Planes[2][at] = (albedo.B * times.B) + plus;
                }

                above = below;
            }
        });
        return image;
    }

    /// <summary>The mean albedo over a pixel: a regular grid of samples, each standing for an equal part of its area.</summary>
    private static Rgb Integrate(SceneSurface surface, Quad quad, double height, Camera camera)
    {
        (double u0, double v0) = quad.At(0.5, 0.5);
        SceneSurface.Pixel pixel = surface.At(u0, v0);
        (double U, double V, double Z) eye = camera.Centre;
        double lift = height / eye.Z;
        if (surface.IsUniform(u0, v0, quad.Size) && Math.Abs(height) < 0.5)
            return pixel.Sample(u0, v0, u0 + (lift * (eye.U - u0)), v0 + (lift * (eye.V - v0)));
        Rgb sum = default;
        for (int j = 0; j < Samples; j++)
        {
            for (int i = 0; i < Samples; i++)
            {
                (double u, double v) = quad.At((i + 0.5) / Samples, (j + 0.5) / Samples);
                sum += pixel.Sample(u, v, u + (lift * (eye.U - u)), v + (lift * (eye.V - v)));
            }
        }

        return (1f / (Samples * Samples)) * sum;
    }

    /// <summary>Card places of the corners between pixels along a line of the picture.</summary>
    private static (double U, double V)[] Corners(Camera camera, int width, double y)
    {
        (double U, double V)[] corners = new (double U, double V)[width + 1];
        for (int x = 0; x <= width; x++)
            corners[x] = camera.Intersect(x - 0.5, y);
        return corners;
    }

    /// <summary>A pixel's corners on the card; places between them bilinearly (the error is some 1e-4 px).</summary>
    private readonly record struct Quad((double U, double V) A, (double U, double V) B, (double U, double V) C, (double U, double V) D)
    {
        /// <summary>The longer diagonal over √2, mm.</summary>
        public double Size => Math.Sqrt(Math.Max(Square(A, D), Square(B, C)) / 2);

        public (double U, double V) At(double s, double t)
        {
            double a = (1 - s) * (1 - t);
            double b = s * (1 - t);
            double c = (1 - s) * t;
            double d = s * t;
            return ((a * A.U) + (b * B.U) + (c * C.U) + (d * D.U), (a * A.V) + (b * B.V) + (c * C.V) + (d * D.V));
        }

        private static double Square((double U, double V) p, (double U, double V) q) => ((p.U - q.U) * (p.U - q.U)) + ((p.V - q.V) * (p.V - q.V));
    }
}
