using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Application.Tests.Studies;

/// <summary>Rendered photos of a card for studies.</summary>
internal static class StudyPhotos
{
    private static readonly (double U, double V)[] s_marks = [(-6, 2.5), (0.5, -5), (5.5, 4)];

    /// <summary>One target with three marks, from a place that the number chooses.</summary>
    public static byte[] Target(int number) => Of(number, s_marks);

    /// <summary>The same with its tape above the card.</summary>
    public static byte[] High(int number, double height) => Of(number, height, s_marks);

    /// <summary>The mark of one pulse; pulses scatter about u 1 mm, v −2 mm.</summary>
    public static byte[] Pulse(int number)
    {
        Random random = new(900 + number);
        return Of(100 + number, [(1 + (0.2 * (random.NextDouble() - 0.5)), -2 + (0.1 * (random.NextDouble() - 0.5)))]);
    }

    public static byte[] Of(int number, params (double U, double V)[] marks) => Of(number, 0, marks);

    private static byte[] Of(int number, double height, (double U, double V)[] marks) => Scene.Render(new("study", 40)
    {
        NoiseSeed = 40 + number,
        Camera = new(800, 800, 900),
        Pose = new(13, 3 + (number % 5), 40 * number, (number % 3) - 1),
        Burns = [.. marks.Select(m => new BurnSpec(m.U, m.V, 0.9, 0.12, 2.6, 1.4, 0.4))],
        TapeHeight = height,
        Output = new(PhotoFormat.Jpeg),
    }).Photo;
}
