namespace MarkReader.Practice.Beams;

/// <summary>A test pulse and the tape it falls on.</summary>
/// <param name="Energy">Energy of the pulse, mJ.</param>
/// <param name="Threshold">Fluence at which the tape takes a mark, mJ/mm².</param>
public sealed record TestPulse(double Energy, double Threshold);
