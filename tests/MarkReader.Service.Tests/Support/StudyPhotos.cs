using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Service.Tests.Support;

/// <summary>Rendered photos for studies, drawn once for all tests.</summary>
internal static class StudyPhotos
{
    private static readonly (double U, double V)[] s_marks = [(-6, 2.5), (0.5, -5), (5.5, 4)];
    private static readonly Lazy<byte[][]> s_targets = new(() => Render(6, i => s_marks));
    private static readonly Lazy<byte[][]> s_other = new(() => Render(1, i => [(-2, 5), (4, -1), (-5, -6)]));
    private static readonly Lazy<byte[][]> s_pulses = new(() => Render(6, i => [(1 + (0.15 * Math.Sin(2.4 * i)), -2 + (0.08 * Math.Cos(3.1 * i)))]));

    /// <summary>One target with three marks, from six places.</summary>
    public static IReadOnlyList<byte[]> Targets => s_targets.Value;

    /// <summary>Another target with three marks.</summary>
    public static byte[] Other => s_other.Value[0];

    /// <summary>Marks of six pulses, one in each photo, about u 1 mm, v −2 mm.</summary>
    public static IReadOnlyList<byte[]> Pulses => s_pulses.Value;

    private static byte[][] Render(int count, Func<int, (double U, double V)[]> marks)
    {
        byte[][] photos = new byte[count][];
        Parallel.For(0, count, i => photos[i] = Scene.Render(new("study", 40)
        {
            NoiseSeed = 40 + i,
            Camera = new(800, 800, 900),
            Pose = new(13, 3 + i, 60 * i, (i % 3) - 1),
            Burns = [.. marks(i).Select(m => new BurnSpec(m.U, m.V, 0.9, 0.12, 2.6, 1.4, 0.4))],
            Output = new(PhotoFormat.Jpeg),
        }).Photo);
        return photos;
    }
}
