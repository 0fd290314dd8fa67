using MarkReader.Cameras.Profiles;

namespace MarkReader.Application.Tests.Cameras;

/// <summary>A profile with numbers like those of a phone.</summary>
internal static class SomeCamera
{
    public static CameraProfile Named(string name) => new(
        name,
        new(2026, 3, 4, 5, 6, 7, TimeSpan.Zero),
        new(new(4032, 3024), 5.1, 26, 1, "0123456789abcdef"),
        new(new(4032, 3024), 3001.25, 3001.25, new(2010.5, 1502.25), new(-0.05, 0.01, 0, 0.0002, -0.0001)),
        [0.5, 0.5, 0.6, 0.7, 0.001, 0.002, 0, 0.00001, 0.00001],
        0.12,
        0.07,
        14);

    /// <summary>The same lens, calibrated again a month later.</summary>
    public static CameraProfile Later(string name) => Named(name) with { Made = Named(name).Made.AddMonths(1), ResidualPx = 0.06 };
}
