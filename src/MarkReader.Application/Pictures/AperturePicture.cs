using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Verdicts;
using MarkReader.Alignment.Visits;
using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.Pictures;

/// <summary>The beam in the head's entry hole.</summary>
internal static class AperturePicture
{
    /// <returns>Null until the steady mark is measured.</returns>
    public static VisitPicture? Of(PictureSource source)
    {
        if (source.Setup.Aperture is not { } aperture || source.Advice.State.Centring?.Offset is not { } offset)
            return null;
        VisitPictureWords words = source.Words;
        double? clipped = Clipped(aperture, offset);
        ApertureView view = new(
            source.IsBefore ? words.ApertureTitleBefore : words.ApertureTitle, aperture.Diameter, aperture.BeamDiameter, new(CardPoint.Origin + offset.Vector, offset.Covariance))
        {
            Tolerance = aperture.Tolerance,
            Clipped = clipped,
            Style = source.Style.Style,
        };
        string place = VisitPictureWords.Fill(
            words.Aperture, source.Text(offset.Vector.U), source.Text(offset.Vector.V), source.Round(aperture.Diameter), source.Text(offset.Vector.Magnitude), source.Round(aperture.Tolerance));
        string power = clipped switch
        {
            null => "",
            < ApertureView.LeastPart => " " + VisitPictureWords.Fill(words.ClippedLess, source.Round(aperture.BeamDiameter)),
            { } part => " " + VisitPictureWords.Fill(words.Clipped, source.Style.Style.Numbers.Number(Math.Round(100 * part, 2)), source.Round(aperture.BeamDiameter)),
        };
        return new("aperture", place + power, view);
    }

    /// <summary>Part of the power that the hole keeps back, the mean over the offset's distribution, 0 to 1; null for sizes that are none.</summary>
    internal static double? Clipped(VisitAperture aperture, MeasuredVector offset)
    {
        BeamAperture hole = new(VisitPictureTexts.Get("aperturePicture.entryHole"), 0.5 * aperture.Diameter, MeasuredLength.Exact(0.5 * aperture.BeamDiameter), new(CardPoint.Origin + offset.Vector, offset.Covariance));
        return Clipping.Through(hole).TryGet(out TransmittedPower? power, out _) ? Math.Clamp(1 - power.Mean, 0, 1) : null;
    }
}
