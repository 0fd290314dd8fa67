using System.Globalization;
using MarkReader.Alignment.Screws;

namespace MarkReader.Alignment.Advice;

/// <summary>The reasons that go with an action.</summary>
internal sealed class AdviceWords(LegSetup setup)
{
    public const string FirstMark = "No mark yet. Begin at the near station, where even a crooked beam meets the target.";

    public const string FirstMarkAgain = "Where the beam runs is open since the last change. Begin at the near station, where even a crooked beam meets the target.";

    public string SlopeOpen(double path) => Say($"The slope is not known yet. A mark at the {Station(path)} tells it.");

    public string SeeTurns(double path, IReadOnlyList<LegEvent.Turn> turns) =>
        Say($"Screw {string.Join(" and ", turns.Select(t => t.Screw).Distinct())} turned; a mark at the {Station(path)} shows what that did.");

    public string Undecided(double path, LegState state) =>
        Say($"{Spread(state)}The chance that it is within {setup.Tolerance.Millimetres:0.##} mm is {Percent(state.Spread.Probability)}; a mark at the {Station(path)} tells most.");

    public string Within(LegState state) =>
        Say($"{Spread(state)}That is within {setup.Tolerance.Millimetres:0.##} mm with a probability of {Percent(state.Spread.Probability)}.");

    public string Turn(ScrewResponse response, bool oneSided, LegState state)
    {
        if (oneSided)
            return Say($"{Spread(state)}This turn of screw {response.Screw} goes beyond the place wanted: the next one comes back from one side, so that lost motion does not count.");
        return response.SenseKnown
            ? Say($"{Spread(state)}One turn of screw {response.Screw} clockwise changes the slope by ({Tenths(response.U)}, {Tenths(response.V)}) mrad.")
            : Say($"{Spread(state)}Which way screw {response.Screw} pushes is not known yet ({Percent(response.SenseProbability)} for the way assumed); the turn is kept small enough for either way.");
    }

    public string Doubtful(Misfit misfit) =>
        Say($"The mark at the {Station(misfit.Mark.Path)} lies {Off(misfit):0.00} mm from where it was expected. Fire there once more before anything is turned.");

    public string Contradiction(Misfit misfit) => misfit.Turned.Count > 0
        ? Say($"The mark at the {Station(misfit.Mark.Path)} lies {Off(misfit):0.00} mm from where the turn of screw {string.Join(" and ", misfit.Turned)} should have put it, whichever way the screw pushes. Check that the screw is not loose, that the frame has not slipped and that the turn was entered as made; then fire again.")
        : Say($"The mark at the {Station(misfit.Mark.Path)} lies {Off(misfit):0.00} mm from where it was expected although nothing was turned. Check the path length, that the mark belongs to this leg, and that mirror, target and carriage are tight; then fire again. An earlier mark may also have been wrong.");

    public string NoScrewHelps(LegState state) =>
        Say($"{Spread(state)}None of the screws, as described and as learned, moves the beam the way it has to go. Check the frame's description: which corner each screw is at, and which is the pivot.");

    public string NotSettling(int pulses) =>
        Say($"After {pulses} pulses the spread is still not decided against {setup.Tolerance.Millimetres:0.##} mm. Check that nothing is loose, or allow a larger tolerance.");

    public static string UnlikeFrame(string screw) =>
        $"Screw {screw} moves the beam otherwise than its frame's description says: check its corner, its name, the arm and the pitch.";

    public string LeftOut(Misfit outlier) =>
        Say($"A mark at the {Station(outlier.Mark.Path)}, {Off(outlier):0.00} mm from where it was expected, is left out: the one after it lies where it should.");

    private string Spread(LegState state) => state.Slope is { } slope
        ? Say($"The spread over the travel is {slope.Magnitude * setup.Travel:0.00} mm. ")
        : string.Empty;

    private string Station(double path) => path == setup.Near.Path.Millimetres ? "near station"
        : path == setup.Far.Path.Millimetres ? "far station"
        : Say($"station at {path:0.#} mm");

    private static double Off(Misfit m) => Math.Sqrt(Math.Pow(m.Mark.At.Point.U - m.Expected.U, 2) + Math.Pow(m.Mark.At.Point.V - m.Expected.V, 2));

    private static string Percent(double probability) => Say($"{Math.Clamp(Math.Round(100 * probability), 1, 99):0} %");

    // Without a sign on zero.
    private static string Tenths(double value) => (Math.Round(value, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
