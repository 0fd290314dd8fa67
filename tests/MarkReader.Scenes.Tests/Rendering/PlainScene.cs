using MarkReader.Scenes.Specs;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace MarkReader.Scenes.Tests.Rendering;

/// <summary>A scene without texture, noise or light gradient, stored without loss, and its grey values.</summary>
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
        Output = new(PhotoFormat.Png16, Grey: true),
    };

    public static double[,] Grey(byte[] photo)
    {
        using Image<L16> image = Image.Load<L16>(photo);
        double[,] grey = new double[image.Height, image.Width];
        for (int y = 0; y < image.Height; y++)
        {
            for (int x = 0; x < image.Width; x++)
                grey[y, x] = image[x, y].PackedValue / 65535.0;
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
