using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Scenes.Fixtures;

/// <summary>One round on a leg of the invented machine: a straight beam p(L) = aim + slope · L on a target square to it.</summary>
/// <param name="Aim">p(0) in the card frame, mm.</param>
/// <param name="Slope">Slope of the beam, mrad.</param>
internal sealed record LegRound(string Leg, double NearPath, double FarPath, PointTruth Aim, PointTruth Slope)
{
    public PointTruth Near => At(NearPath);

    public PointTruth Far => At(FarPath);

    /// <summary>The leg's part of the truth file of a photo taken by this camera.</summary>
    public LegTruth Truth(string role, SceneSpec photo, Camera camera, string? first = null)
    {
        Quantities.PixelPoint aim = camera.ToPhoto(new(Aim.U, Aim.V), photo.TapeHeight);
        return new(Leg, role, NearPath, FarPath, Near, Far, new(Aim.U, Aim.V, aim.X, aim.Y), Slope, first);
    }

    private PointTruth At(double path) => new(Math.Round(Aim.U + (Slope.U * path / 1000), 9), Math.Round(Aim.V + (Slope.V * path / 1000), 9));
}
