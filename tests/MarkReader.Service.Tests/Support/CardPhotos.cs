using MarkReader.Application.Cameras;
using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Service.Tests.Support;

/// <summary>Photos of a flat card and of a bent one from several sides, and the profile of the camera that took them; drawn once for all tests.</summary>
internal static class CardPhotos
{
    private const int Width = 800;

    private static readonly CameraSpec s_camera = new(Width, 600, 600, 3, -2, -0.05, 0.01);
    private static readonly Lazy<byte[][]> s_flat = new(() => Render(new()));
    private static readonly Lazy<byte[][]> s_bent = new(() => Render(new(Curvature: 2 * 0.6 / (25 * 25))));

    public static IReadOnlyList<byte[]> Flat => s_flat.Value;

    public static IReadOnlyList<byte[]> Bent => s_bent.Value;

    /// <summary>Of a camera that says nothing in its files; another name is another profile, not a copy.</summary>
    public static string Profile(string name) => CameraProfileFile.Write(new CameraProfile(
        name,
        new DateTimeOffset(2026, 3, 4, 5, 6, 7, TimeSpan.Zero).AddMinutes(name.Sum(c => c)),
        new(new(Width, 600), null, null, 1, null),
        new CameraModel(new(Width, 600), 600, 600, new PixelPoint(399.5 + 3, 299.5 - 2), new(-0.05, 0.01, 0, 0, 0)),
        [0.5, 0.5, 0.5, 0.5, 0.001, 0.002, 0, 0.0001, 0.0001],
        0.1,
        0.05,
        12));

    private static byte[][] Render(CardSpec card)
    {
        IReadOnlyList<SceneSpec> views = CardViews.Of(s_camera, card, null, new Random(5), 4);
        byte[][] photos = new byte[views.Count][];
        Parallel.For(0, photos.Length, i => photos[i] = Scene.Render(views[i]).Photo);
        return photos;
    }
}
