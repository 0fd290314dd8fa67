using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Legs;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.NextPulse;

/// <summary>The station whose next pulse lessens the aim point's uncertainty most.</summary>
/// <remarks>
/// A c-optimal design for extrapolation, one pulse at a time (V. V. Fedorov, Theory of Optimal Experiments, Academic Press 1972, chapter 2): for every station the fit is
/// made as if a mark had fallen where the line says, with all that the marks and stations share, so that a path length that limits the aim makes pulses there
/// worth nothing. With equal pulses and exact paths the pulses come to be shared as <see cref="ExtrapolationDesign"/> says.
/// </remarks>
public static class NextPulsePlan
{
    private const int MostStations = 50, MostMarks = 200;

    /// <param name="observations">The marks so far; none to begin with.</param>
    /// <param name="stations">Where a pulse can be fired; two or more, equal to the observations' stations where they are the same.</param>
    public static Outcome<NextPulseAdvice> Choose(Leg leg, IReadOnlyList<Observation> observations, IReadOnlyList<Station> stations, NextPulseOptions? options = null)
    {
        options ??= NextPulseOptions.Default;
        if (stations.Count is < 2 or > MostStations || observations.Count > MostMarks)
            return new Failure(NextPulseFailures.StationCount, AlignmentTexts.Word("nextPulsePlan.stationsAndMarksWereGiven", stations.Count, observations.Count), AlignmentTexts.Get("nextPulsePlan.giveStationsCarriageAndAt"));
        if (options.Pulse.Determinant <= 0)
            return new Failure(NextPulseFailures.PulseUncertainty, AlignmentTexts.Get("nextPulsePlan.uncertaintyPulseMarkZeroIn"), AlignmentTexts.Get("nextPulsePlan.giveStandardUncertaintyOneMark"));
        if (LegChecks.All(leg, stations) is { } wrong)
            return wrong;

        if (!AimSolver.Solve(leg, observations).TryGet(out AimSolution? now, out Failure? failure))
        {
            // Marks at one station make no line yet; anything else is wrong with the marks.
            return observations.Select(o => o.Station.Path).Distinct().Count() < 2 ? Begin(leg, observations, stations, options) : failure;
        }

        double uncertainty = Size(now);
        PulseChoice[] choices =
        [
            .. stations.Select(s =>
            {
                MeasuredPoint expected = ExpectedMark.At(leg, observations, s);
                return new PulseChoice(s, expected with { Covariance = expected.Covariance + options.Pulse }, After(leg, observations, s, expected.Point, options));
            }).OrderBy(c => c.Uncertainty ?? double.PositiveInfinity),
        ];
        bool pays = uncertainty > options.Enough.Millimetres && choices[0].Uncertainty <= uncertainty * (1 - options.LeastGain);
        return new NextPulseAdvice(choices, uncertainty, pays);
    }

    // Without a mark the near station comes first, where the beam is the least likely to miss the tape; then the station that makes the surest line.
    private static NextPulseAdvice Begin(Leg leg, IReadOnlyList<Observation> observations, IReadOnlyList<Station> stations, NextPulseOptions options) => observations.Count == 0
        ? new([.. stations.OrderBy(s => s.Path).Select(s => new PulseChoice(s, null, null))], null, true)
        : new(
            [.. stations.Select(s => new PulseChoice(s, null, After(leg, observations, s, observations[0].Place, options))).OrderBy(c => c.Uncertainty ?? double.PositiveInfinity)],
            null,
            true);

    private static double? After(Leg leg, IReadOnlyList<Observation> observations, Station station, CardPoint place, NextPulseOptions options) =>
        AimSolver.Solve(leg, [.. observations, new Observation(station, new MeasuredPoint(place, options.Pulse))]).TryGet(out AimSolution? after, out _) ? Size(after) : null;

    private static double Size(AimSolution solution) => Math.Sqrt(solution.Aim.Covariance.Uu + solution.Aim.Covariance.Vv);
}
