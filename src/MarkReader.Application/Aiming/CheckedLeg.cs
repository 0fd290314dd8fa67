using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>A leg's inputs after their checks: the leg and its two stations.</summary>
public sealed record CheckedLeg(Leg Leg, Station Near, Station Far)
{
    /// <summary>Checks the inputs; the first thing wrong is the refusal (<see cref="LegFailures"/>).</summary>
    public static Outcome<CheckedLeg> From(LegInput input)
    {
        Failure? wrong = LegChecks.NearAndFar(input.NearPath, input.FarPath, input.PathUncertainty)
            ?? LegChecks.Incidence(input.IncidenceDegrees)
            ?? LegChecks.Pivot(input.PivotOffset, input.PivotUncertainty, input.NearPath);
        if (wrong is not null)
            return wrong;
        Length uncertainty = Length.FromMillimetres(input.PathUncertainty);
        return new CheckedLeg(
            new(Angle.FromDegrees(input.IncidenceDegrees), Length.FromMillimetres(input.PivotOffset), Length.FromMillimetres(input.PivotUncertainty)),
            new(Length.FromMillimetres(input.NearPath), uncertainty),
            new(Length.FromMillimetres(input.FarPath), uncertainty));
    }
}
