using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Apertures;

/// <summary>A round opening square to the beam, and the beam where it passes it.</summary>
/// <param name="Name">The head's entry hole, the lens, the nozzle.</param>
/// <param name="Radius">Radius a of the opening.</param>
/// <param name="BeamRadius">1/e² intensity radius w of the beam at the opening, with its uncertainty.</param>
/// <param name="Offset">Place of the beam's axis against the opening's centre, with its covariance.</param>
/// <remarks>An opening at 45° to the beam is an ellipse to it: not this.</remarks>
public sealed record BeamAperture(string Name, Length Radius, MeasuredLength BeamRadius, MeasuredPoint Offset);

/// <summary>The part of a beam's power that passes one or more apertures.</summary>
/// <param name="AtEstimate">For the best estimates of offset and beam radius.</param>
/// <param name="Mean">The expectation over their distributions: the estimate to state (JCGM 101:2008, 7.6).</param>
/// <param name="Uncertainty">Standard deviation over their distributions.</param>
/// <param name="Low">Lower end of the probabilistically symmetric 95 % interval (JCGM 101:2008, 7.7).</param>
/// <param name="High">Its upper end.</param>
/// <param name="AtLeast">The value that is exceeded with a probability of 95 %.</param>
public sealed record TransmittedPower(double AtEstimate, double Mean, double Uncertainty, double Low, double High, double AtLeast);
