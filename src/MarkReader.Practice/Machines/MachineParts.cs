using MarkReader.Quantities;

namespace MarkReader.Practice.Machines;

/// <summary>The true path lengths at the two ends of a carriage's travel; between them the path runs evenly.</summary>
public sealed record TruePaths(Length Near, Length Far)
{
    internal double At(double t) => ((1 - t) * Near.Millimetres) + (t * Far.Millimetres);
}

/// <summary>A round hole that the beam must pass.</summary>
/// <param name="Radius">Its radius; a beam whose middle falls outside is lost.</param>
/// <param name="Offset">Place of its middle: for the entry hole always zero (it is the target's middle), below the head u along x and v along y.</param>
public sealed record Aperture(Length Radius, CardVector Offset);

/// <summary>The head: entry hole, mirror three, lens and nozzle, one behind the other.</summary>
/// <param name="Entry">The entry hole; its middle is the middle of leg 2's target.</param>
/// <param name="Lens">The lens in its mount.</param>
/// <param name="Nozzle">The nozzle.</param>
/// <param name="MirrorBehindEntry">From the entry hole to mirror three's middle, along the beam.</param>
/// <param name="LensBelow">From mirror three's middle down to the lens.</param>
/// <param name="NozzleBelow">From mirror three's middle down to the nozzle's end.</param>
public sealed record Head(Aperture Entry, Aperture Lens, Aperture Nozzle, Length MirrorBehindEntry, Length LensBelow, Length NozzleBelow)
{
    /// <summary>Entry 18 mm wide, lens 18 mm, nozzle 8 mm (without its tip).</summary>
    public static Head Usual { get; } = new(
        new(Length.FromMillimetres(9), new(0, 0)), new(Length.FromMillimetres(9), new(0, 0)), new(Length.FromMillimetres(4), new(0, 0)),
        Length.FromMillimetres(25), Length.FromMillimetres(30), Length.FromMillimetres(70));
}
