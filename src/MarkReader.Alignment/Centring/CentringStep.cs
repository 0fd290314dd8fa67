using MarkReader.Alignment.Estimates;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Centring;

/// <summary>One thing to do so that the beam passes the aperture's centre, and the steps of the job that it makes stale.</summary>
public abstract record CentringStep
{
    /// <summary>In the order of the work. A fresh mark against the aperture is asked for after every step.</summary>
    public abstract IReadOnlyList<JobStep> Stale { get; }
}

/// <summary>Move the target's plate sideways, by a distance positive towards +u.</summary>
public sealed record MovePlate(MeasuredLength Distance) : CentringStep
{
    public override IReadOnlyList<JobStep> Stale => [JobStep.LegThree];
}

/// <summary>The mark is too high: raise the target with shims of this height under its mount.</summary>
public sealed record ShimTarget(MeasuredLength Height) : CentringStep
{
    public override IReadOnlyList<JobStep> Stale => [JobStep.LegThree];
}

/// <summary>The mark is too low: raise the tube's end next to mirror one, then align both legs again.</summary>
/// <param name="BeamRise">How much the beam is to rise at mirror one.</param>
/// <param name="Height">How much to raise the front support, by the geometry of the supports; null when that was not given. Then raise both ends by the beam's rise.</param>
/// <param name="Tilt">The tilt that raising the front support alone gives the beam; zero when both ends are raised.</param>
public sealed record RaiseTube(MeasuredLength BeamRise, MeasuredLength? Height, Angle Tilt) : CentringStep
{
    public override IReadOnlyList<JobStep> Stale => [JobStep.LegOne, JobStep.LegTwo, JobStep.Survey, JobStep.Centring, JobStep.LegThree];
}
