using System.Globalization;
using MarkReader.Alignment.Screws;
using static MarkReader.Quantities.Texts<MarkReader.Alignment.Texts.AdviserTexts>;

namespace MarkReader.Alignment.Advice;

/// <summary>The reasons that go with an action.</summary>
internal sealed class AdviceWords(LegSetup setup)
{
    public static string FirstMark => Get("leg.firstMark");

    public static string FirstMarkAgain => Get("leg.firstMarkAgain");

    public string SlopeOpen(double path) => Say("leg.slopeOpen", Station(path));

    public string SeeTurns(double path, IReadOnlyList<LegEvent.Turn> turns) =>
        Say("leg.seeTurns", string.Join(Get("leg.and"), turns.Select(t => t.Screw).Distinct()), Station(path));

    public string Undecided(double path, LegState state) =>
        Say("leg.undecided", Spread(state), setup.Tolerance.Millimetres, Percent(state.Spread.Probability), Station(path));

    public string Within(LegState state) =>
        Say("leg.within", Spread(state), setup.Tolerance.Millimetres, Percent(state.Spread.Probability));

    public string Turn(ScrewResponse response, bool oneSided, LegState state)
    {
        if (oneSided)
            return Say("leg.turnBeyond", Spread(state), response.Screw);
        return response.SenseKnown
            ? Say("leg.turn", Spread(state), response.Screw, Tenths(response.U), Tenths(response.V))
            : Say("leg.turnSenseOpen", Spread(state), response.Screw, Percent(response.SenseProbability));
    }

    public string Doubtful(Misfit misfit) =>
        Say("leg.doubtful", Station(misfit.Mark.Path), Off(misfit));

    public string Contradiction(Misfit misfit) => misfit.Turned.Count > 0
        ? Say("leg.contradictionTurned", Station(misfit.Mark.Path), Off(misfit), string.Join(Get("leg.and"), misfit.Turned))
        : Say("leg.contradiction", Station(misfit.Mark.Path), Off(misfit));

    public string NoScrewHelps(LegState state) =>
        Say("leg.noScrewHelps", Spread(state));

    public string TooFine(LegState state) =>
        Say("leg.tooFine", Spread(state));

    public string NotSettling(int pulses) =>
        Say("leg.notSettling", pulses, setup.Tolerance.Millimetres);

    public static string UnlikeFrame(string screw) =>
        Say("warning.screwUnlikeFrame", screw);

    public string LeftOut(Misfit outlier) =>
        Say("warning.markLeftOut", Station(outlier.Mark.Path), Off(outlier));

    private string Spread(LegState state) => state.Slope is { } slope
        ? Say("leg.spread", slope.Magnitude * setup.Travel)
        : string.Empty;

    private string Station(double path) => path == setup.Near.Path.Millimetres ? Get("station.near")
        : path == setup.Far.Path.Millimetres ? Get("station.far")
        : Say("station.at", path);

    private static double Off(Misfit m) => Math.Sqrt(Math.Pow(m.Mark.At.Point.U - m.Expected.U, 2) + Math.Pow(m.Mark.At.Point.V - m.Expected.V, 2));

    private static string Percent(double probability) => Say("percent", Math.Clamp(Math.Round(100 * probability), 1, 99));

    // Without a sign on zero.
    private static string Tenths(double value) => (Math.Round(value, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
}
