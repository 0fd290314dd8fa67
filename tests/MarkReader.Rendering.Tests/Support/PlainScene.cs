using MarkReader.Quantities;
using MarkReader.Rendering.Exposure;
using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Tests.Support;

/// <summary>A scene without texture, noise or light gradient, and its grey values.</summary>
internal static class PlainScene
{
    public static SceneSpec Straight(params BurnSpec[] burns) => new("plain", 1)
    {
        Plain = true,
        Camera = new(900, 900, 900),
        Pose = new(15),
        Card = new(InkSpread: 0),
        Burns = burns,
        Light = new(0.9, 0, 0, 0, 1, 1),
        Sensor = new(0, FullWell: 0, ReadNoise: 0, NoiseGrain: 0, Sharpening: 0, Tone: 0),
    };

    /// <summary>Where the scene's only mark must be seen.</summary>
    public static PixelPoint Place(SceneSpec spec)
    {
        BurnSpec burn = Assert.Single(spec.Burns);
        return SceneRenderer.CameraOf(spec).ToPhoto(new(burn.U, burn.V), spec.TapeHeight);
    }

    /// <summary>Displayed grey values, 0 to 1, by row and column.</summary>
    public static double[,] Grey(SceneSpec spec)
    {
        LinearImage image = SceneRenderer.Render(spec);
        ToneCurve curve = new(spec.Sensor.Tone);
        double[,] grey = new double[image.Height, image.Width];
        for (int y = 0; y < image.Height; y++)
        {
            for (int x = 0; x < image.Width; x++)
            {
                double At(int plane) => curve.At(image.Planes[plane][(y * image.Width) + x]);
                grey[y, x] = ((0.299 * At(0)) + (0.587 * At(1)) + (0.114 * At(2))) / 65535;
            }
        }

        return grey;
    }

    /// <summary>The centroid of darkness within a square window about a pixel.</summary>
    public static (double X, double Y) DarkCentroid(double[,] grey, double aboutX, double aboutY, int half)
    {
        int cx = (int)Math.Round(aboutX);
        int cy = (int)Math.Round(aboutY);
        double paper = grey[cy - half, cx - half];
        (double sum, double sx, double sy) = (0, 0, 0);
        for (int y = cy - half; y <= cy + half; y++)
        {
            for (int x = cx - half; x <= cx + half; x++)
            {
                double dark = paper - grey[y, x];
                sum += dark;
                sx += dark * x;
                sy += dark * y;
            }
        }

        return (sx / sum, sy / sum);
    }
}
