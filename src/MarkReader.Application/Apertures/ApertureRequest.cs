using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Estimates;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Apertures;

/// <summary>What is asked of an aperture, not yet checked.</summary>
/// <param name="Opening">The opening and where the beam passes it; null when only the beam's size is asked for.</param>
/// <param name="Beam">The beam's size, or marks that show it.</param>
public sealed record ApertureRequest(OpeningInput? Opening, BeamInput Beam);

/// <summary>A round opening square to the beam and the beam's place in it, mm.</summary>
/// <param name="Diameter">Diameter of the opening.</param>
/// <param name="OffsetU">The beam's place from the opening's centre, u to the right as one looks at the target.</param>
/// <param name="OffsetV">The same, v up.</param>
/// <param name="Uncertainty">Standard uncertainty of each of the two.</param>
public sealed record OpeningInput(double Diameter, double OffsetU, double OffsetV, double Uncertainty = OpeningInput.DefaultUncertainty)
{
    /// <summary>A mark's place against the opening's edge read to about ±0.2 mm: 0.2/√3 ≈ 0.1 mm (JCGM 100:2008, 4.3.7).</summary>
    public const double DefaultUncertainty = 0.1;

    private const double LeastDiameter = 0.2, MostDiameter = 200, Farthest = 140;

    internal Failure? Check()
    {
        string hint = InputTexts.Get("apertureRequest.giveOpeningDiameterAndBeam");
        return InputChecks.Between(Diameter, (LeastDiameter, MostDiameter), ApertureFailures.ApertureRadius, InputTexts.Get("apertureRequest.openingDiameterInMm"), hint)
            ?? InputChecks.Between(OffsetU, (-Farthest, Farthest), ApertureFailures.ApertureOffset, InputTexts.Get("apertureRequest.beamOffsetAlongUIn"), hint)
            ?? InputChecks.Between(OffsetV, (-Farthest, Farthest), ApertureFailures.ApertureOffset, InputTexts.Get("apertureRequest.beamOffsetAlongVIn"), hint)
            ?? InputChecks.Between(Uncertainty, (0, MostDiameter / 2), ApertureFailures.ApertureOffset, InputTexts.Get("apertureRequest.standardUncertaintyBeamOffsetIn"), hint);
    }
}

/// <summary>The beam at the opening.</summary>
public abstract record BeamInput
{
    private BeamInput()
    {
    }

    /// <summary>Its 1/e² diameter, mm, and its standard uncertainty; <see cref="UsualPart"/> of the diameter when null.</summary>
    public sealed record Stated(double Diameter, double? Uncertainty = null) : BeamInput
    {
        /// <summary>A data sheet's value or a burnt spot tells the diameter to about ±17 %: 0.17/√3 ≈ a tenth (JCGM 100:2008, 4.3.7).</summary>
        public const double UsualPart = 0.1;

        internal double UsedUncertainty => Uncertainty ?? (UsualPart * Diameter);

        internal Failure? Check()
        {
            string hint = InputTexts.Get("apertureRequest.giveBeamEDiameterAt");
            return InputChecks.Between(Diameter, (0.1, 200), ApertureFailures.BeamRadius, InputTexts.Get("apertureRequest.beamDiameterInMm"), hint)
                ?? InputChecks.Between(
                    UsedUncertainty, (0, Diameter / Clipping.RadiusOverUncertainty), ApertureFailures.BeamRadiusUncertain, InputTexts.Get("apertureRequest.standardUncertaintyBeamDiameterIn"), InputTexts.Get("apertureRequest.measureBeamSizeWithMarks"));
        }
    }

    /// <summary>Marks of pulses of different energy at the opening.</summary>
    public sealed record FromMarks(EnergyMarks Marks) : BeamInput;
}
