using MarkReader.Quantities;

namespace MarkReader.Alignment.Apertures;

/// <summary>Refusals of apertures and of marks from which the beam's size is worked out.</summary>
public static class ApertureFailures
{
    public static readonly FailureCode ApertureCount = Bad("APERTURE_COUNT");
    public static readonly FailureCode ApertureRadius = Bad("APERTURE_RADIUS");
    public static readonly FailureCode BeamRadius = Bad("BEAM_RADIUS");
    public static readonly FailureCode BeamRadiusUncertain = Bad("BEAM_RADIUS_UNCERTAIN");
    public static readonly FailureCode ApertureOffset = Bad("APERTURE_OFFSET");
    public static readonly FailureCode TooFewEnergies = Bad("TOO_FEW_ENERGIES");
    public static readonly FailureCode EnergyInvalid = Bad("ENERGY_INVALID");
    public static readonly FailureCode DiameterInvalid = Bad("DIAMETER_INVALID");
    public static readonly FailureCode DiametersDoNotGrow = new("DIAMETERS_DO_NOT_GROW", FailureKind.NotMeasurable);

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
