using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>Which of two marks on one photo is the near one, as seen in the photo as displayed.</summary>
public enum FirstMark
{
    Left,
    Right,
    Upper,
    Lower,
}

/// <summary>The photos of a leg: a near and a far one of the same target, or one that shows both marks.</summary>
public abstract record AimPhotos
{
    private AimPhotos()
    {
    }

    /// <summary>The photo that shows the far mark, on which the aim is drawn.</summary>
    public abstract ReadOnlyMemory<byte> WithFarMark { get; }

    /// <summary>Two photos of the same tape; the far one may also show the near mark.</summary>
    public sealed record NearAndFar(ReadOnlyMemory<byte> Near, ReadOnlyMemory<byte> Far) : AimPhotos
    {
        /// <summary>Where the user says the near mark is in the near photo; null: the one mark that is found there.</summary>
        public PixelPoint? NearAt { get; init; }

        /// <summary>Where the user says the far mark is in the far photo; null: the one that is found there and is not the near mark.</summary>
        public PixelPoint? FarAt { get; init; }

        public override ReadOnlyMemory<byte> WithFarMark => Far;
    }

    /// <summary>One photo with both marks; <paramref name="First"/> says which is the near one.</summary>
    public sealed record Both(ReadOnlyMemory<byte> Photo, FirstMark First) : AimPhotos
    {
        public override ReadOnlyMemory<byte> WithFarMark => Photo;
    }

    /// <summary>One photo in which the user names the places of both marks.</summary>
    public sealed record BothNamed(ReadOnlyMemory<byte> Photo, PixelPoint NearAt, PixelPoint FarAt) : AimPhotos
    {
        public override ReadOnlyMemory<byte> WithFarMark => Photo;
    }
}

/// <summary>The leg's inputs as the user gives them, in mm and degrees, not yet checked.</summary>
/// <param name="NearPath">Path length of the near station, mm.</param>
/// <param name="FarPath">Path length of the far station, mm.</param>
/// <param name="PathUncertainty">Standard uncertainty of each path length, mm.</param>
/// <param name="IncidenceDegrees">Angle between the beam and the target's normal, in the plane of u; positive when the +u side lies farther along the beam.</param>
/// <param name="PivotOffset">Distance k between the reflecting point and the point about which the beam swings, mm.</param>
/// <param name="PivotUncertainty">Standard uncertainty of k, mm.</param>
public sealed record LegInput(
    double NearPath,
    double FarPath,
    double PathUncertainty = LegInput.DefaultPathUncertainty,
    double IncidenceDegrees = 0,
    double PivotOffset = 0,
    double PivotUncertainty = 0)
{
    /// <summary>A length read off a tape measure to about ±2 mm: 2/√3 ≈ 1 mm (JCGM 100:2008, 4.3.7).</summary>
    public const double DefaultPathUncertainty = 1;
}
