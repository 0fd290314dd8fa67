using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Estimates;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Apertures;

/// <summary>A beam and what an opening lets through of it.</summary>
/// <param name="BeamRadius">The 1/e² radius that was used.</param>
/// <param name="Size">How it follows from marks; null when it was stated.</param>
/// <param name="Opening">Null when only the beam's size was asked for.</param>
public sealed record ApertureFinding(MeasuredLength BeamRadius, BeamSize? Size, OpeningFinding? Opening);

/// <summary>The power that passes an opening.</summary>
/// <param name="Input">The opening and the offset.</param>
/// <param name="Now">With the beam where it is.</param>
/// <param name="Centred">With the beam moved by the measured offset, whose error stays.</param>
public sealed record OpeningFinding(OpeningInput Input, TransmittedPower Now, TransmittedPower Centred)
{
    /// <summary>What centring gains, as a part of the beam's power.</summary>
    public double Gain => Centred.Mean - Now.Mean;
}

/// <summary>The power that passes an opening, and the beam's size from marks.</summary>
public static class FindTransmission
{
    public static Outcome<ApertureFinding> Run(ApertureRequest request)
    {
        if (request.Opening?.Check() is { } wrong)
            return wrong;
        switch (request.Beam)
        {
            case BeamInput.Stated stated:
                return stated.Check() is { } unsound
                    ? unsound
                    : Through(request.Opening, MeasuredLength.FromMillimetres(stated.Diameter / 2, stated.UsedUncertainty / 2), null);
            case BeamInput.FromMarks given:
                return BeamSizeFit.Solve(given.Marks.Marks).TryGet(out BeamSize? size, out Failure? failure) ? Through(request.Opening, size.Radius, size) : failure;
            default:
                throw new ArgumentException("Unknown kind of beam.", nameof(request));
        }
    }

    private static Outcome<ApertureFinding> Through(OpeningInput? opening, MeasuredLength beam, BeamSize? size)
    {
        if (opening is null)
            return new ApertureFinding(beam, size, null);
        MeasuredPoint place = new(new(opening.OffsetU, opening.OffsetV), Covariance2.Isotropic(opening.Uncertainty));
        BeamAperture now = new(InputTexts.Get("findTransmission.opening"), Length.FromMillimetres(opening.Diameter / 2), beam, place);
        if (!Clipping.Through(now).TryGet(out TransmittedPower? power, out Failure? failure))
            return failure;
        return Clipping.Through(now with { Offset = place with { Point = CardPoint.Origin } }).TryGet(out TransmittedPower? centred, out failure)
            ? new ApertureFinding(beam, size, new(opening, power, centred))
            : failure;
    }
}
