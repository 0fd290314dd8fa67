using System.Text.Json;
using System.Text.Json.Serialization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.VisitLog;

/// <summary>Events as they are sent to a visit: what a person did, in the words of the visit file.</summary>
public static class EventDraft
{
    private static readonly JsonSerializerOptions s_json = new(ReportJson.Options) { WriteIndented = false, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    /// <summary>The mark of a pulse, from a photo that is kept.</summary>
    /// <param name="pulse">A pulse on a leg or at the head.</param>
    /// <param name="mark">Its number in the photo's marks, from 0.</param>
    public static byte[] Photographed(VisitAction pulse, string photo, int mark) => Write(Pulse(pulse) with { Photo = photo, Mark = mark });

    /// <summary>The mark at a place in a photo that the user shows.</summary>
    public static byte[] Tapped(VisitAction pulse, string photo, PixelPoint tap) => Write(Pulse(pulse) with { Photo = photo, Tap = new(tap.X, tap.Y) });

    /// <summary>A mark that was read off by eye.</summary>
    /// <param name="uncertainty">Standard uncertainty on each axis, the scatter of the pulses included.</param>
    public static byte[] Typed(VisitAction pulse, CardPoint at, Length uncertainty) => Write(Pulse(pulse) with { U = at.U, V = at.V, Uncertainty = uncertainty.Millimetres });

    /// <summary>Work that was done as the action says.</summary>
    /// <exception cref="ArgumentException">A pulse, done or stop: none of them is work that was done.</exception>
    public static byte[] Done(VisitAction action) => Write(action switch
    {
        VisitAction.Turn turn => new("turn") { Leg = turn.Leg, Screw = turn.Screw, Turns = turn.Turns },
        VisitAction.Shim shim => new("shim") { Corner = SurveyReport.Name(shim.Corner), Height = shim.Height.Millimetres },
        VisitAction.MoveTarget move => new("moveTarget") { U = move.By.U, V = move.By.V },
        VisitAction.RaiseTube raise => new("raiseTube") { Height = raise.Height.Millimetres },
        VisitAction.Realign realign => new("realign") { Leg = realign.Leg, At = SurveyReport.Name(realign.At) },
        _ => throw new ArgumentException("The action is no work on the machine.", nameof(action)),
    });

    public static byte[] Skip(string step, string reason) => Write(new("skip") { Step = step, Reason = reason });

    public static byte[] Again(string step) => Write(new("again") { Step = step });

    private static Draft Pulse(VisitAction pulse) => pulse switch
    {
        VisitAction.Fire fire => new("mark") { Leg = fire.Leg, Path = fire.Path, Gantry = fire.Gantry?.Millimetres },
        VisitAction.Survey survey => new("survey") { X = survey.X.Millimetres, Y = survey.Y.Millimetres },
        _ => throw new ArgumentException("The action is no pulse.", nameof(pulse)),
    };

    private static byte[] Write(Draft draft) => JsonSerializer.SerializeToUtf8Bytes(draft, s_json);

    private sealed record Draft(string Kind)
    {
        public string? Leg { get; init; }

        public double? Path { get; init; }

        public double? Gantry { get; init; }

        public double? X { get; init; }

        public double? Y { get; init; }

        public string? Photo { get; init; }

        public int? Mark { get; init; }

        public Place? Tap { get; init; }

        public double? U { get; init; }

        public double? V { get; init; }

        public double? Uncertainty { get; init; }

        public string? Screw { get; init; }

        public double? Turns { get; init; }

        public string? Corner { get; init; }

        public double? Height { get; init; }

        public string? At { get; init; }

        public string? Step { get; init; }

        public string? Reason { get; init; }
    }

    private sealed record Place(double X, double Y);
}
