using MarkReader.Practice.Geometry;

namespace MarkReader.Practice.Frames;

/// <summary>The axes (right, up facing the knobs, and forwards) of a frame that folds the beam by exactly 90°.</summary>
internal static class Folds
{
    /// <summary>Mirror one: the beam comes along −x and leaves along +y.</summary>
    public static Axes One { get; } = Of(-Vector3.AlongX, Vector3.AlongY, Vector3.AlongZ);

    /// <summary>Mirror two: along +y, then along +x.</summary>
    public static Axes Two { get; } = Of(Vector3.AlongY, Vector3.AlongX, Vector3.AlongZ);

    /// <summary>Mirror three: along +x, then down. Its knobs are seen from above, up being away from the bed.</summary>
    public static Axes Three { get; } = Of(Vector3.AlongX, -Vector3.AlongZ, Vector3.AlongZ);

    private static Axes Of(Vector3 incoming, Vector3 outgoing, Vector3 upwards)
    {
        Vector3 forward = (outgoing - incoming).Normalised();
        Vector3 up = (upwards - (upwards.Dot(forward) * forward)).Normalised();
        return new(forward.Cross(up), up, forward);
    }
}
