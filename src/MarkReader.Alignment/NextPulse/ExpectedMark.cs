using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.LineFitting;
using MarkReader.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace MarkReader.Alignment.NextPulse;

/// <summary>Where the next mark at a station falls by the fitted line, without its own scatter.</summary>
public static class ExpectedMark
{
    /// <param name="observations">Marks that make a line.</param>
    /// <returns>
    /// The mark on the tape. Its covariance is that of the line there and of the station's path length, taken as independent of the line: exact for a station
    /// without marks so far, slightly large for one with marks.
    /// </returns>
    /// <exception cref="ArgumentException">The marks make no line.</exception>
    public static MeasuredPoint At(Leg leg, IReadOnlyList<Observation> observations, Station station)
    {
        BeamFrame frame = new(leg.Incidence);
        if (ConditionFit.Solve(new BeamLineConditions(frame, observations)) is not { } fit)
            throw new ArgumentException("The marks make no line.", nameof(observations));
        BeamLine line = BeamLineConditions.Line(fit.Line.Parameters);
        double path = station.Path.Millimetres;
        CardPoint place = frame.OnTape(line, path);
        double z = path + (place.U * frame.Sin);
        // From (x, y) at the mark's z to the tape: u = x/(cos t − sx·sin t), v = y + sy·sin t·u.
        double byX = 1 / (frame.Cos - (line.Sx * frame.Sin)), across = line.Sy * frame.Sin * byX;
        Matrix<double> rows = Matrix<double>.Build.DenseOfArray(new[,] { { 1, z, 0, 0 }, { 0, 0, 1, z } });
        Covariance2 beam = (rows * fit.Line.Covariance.TransposeAndMultiply(rows)).Points()
            + Covariance2.Along(station.PathUncertainty.Millimetres * new CardVector(line.Sx, line.Sy));
        return new(place, beam.Transform(byX, 0, across, 1));
    }
}
