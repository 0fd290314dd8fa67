using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Service.Tests.Support;

/// <summary>Photos of the calibration board, and of a card, by one camera; drawn once for all tests.</summary>
internal static class BoardPhotos
{
    private const int Width = 800;

    private static readonly CameraSpec s_camera = BoardScene.Camera(new Random(6), Width);
    private static readonly SceneSpec[] s_views = [.. BoardScene.Views(s_camera, new Random(7), 12)];
    private static readonly Lazy<byte[][]> s_boards = new(() => Render(s_views));
    private static readonly Lazy<byte[]> s_card = new(() => Scene.Render(CardScene()).Photo);
    private static readonly Lazy<byte[]> s_far = new(() => Scene.Render(CardScene() with { Burns = [new(2.5, -2.2)] }).Photo);
    private static readonly Lazy<byte[]> s_cropped = new(() => Scene.Render(s_views[0] with { Camera = s_camera with { Height = 560 } }).Photo);

    /// <summary>px.</summary>
    public static double FocalLength => s_camera.FocalLength;

    /// <summary>From straight above, then from all sides.</summary>
    public static IReadOnlyList<byte[]> Boards => s_boards.Value;

    /// <summary>A card with one mark at u 2 mm, v −3 mm.</summary>
    public static byte[] Card => s_card.Value;

    /// <summary>The board cut off at one side.</summary>
    public static byte[] Cropped => s_cropped.Value;

    /// <summary>The same card with its mark at u 2.5 mm, v −2.2 mm.</summary>
    public static byte[] Far => s_far.Value;

    private static SceneSpec CardScene() => new("card", 3)
    {
        Camera = s_camera,
        Pose = new(0.0105 * Width, 12, 40, 7),
        Burns = [new(2, -3)],
        Output = new() { Lens = s_views[0].Output.Lens },
    };

    private static byte[][] Render(SceneSpec[] views)
    {
        byte[][] photos = new byte[views.Length][];
        Parallel.For(0, views.Length, i => photos[i] = Scene.Render(views[i]).Photo);
        return photos;
    }
}
