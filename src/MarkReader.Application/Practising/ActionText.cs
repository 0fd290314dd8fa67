using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>Reads what a person wants to do on a practice machine, one line an action.</summary>
public static class ActionText
{
    /// <summary>The lines that are read.</summary>
    public const string Usage = """
        fire LEG PATH            one pulse on leg 1 or 2 at a path length in mm: fire 1 480
        turn LEG SCREW TURNS     turn 1 A 1/8     turn 2 B -3/16     turn 1 A 1/8 ccw
        survey X Y               one pulse at the head, at x and y in mm: survey 500 400
        shim CORNER MM           shims under nearLeft, nearRight, farLeft or farRight: shim farRight 0.8
        move U V                 move the head's target by mm
        raise MM                 raise the tube at both ends
        realign 2 near|far       align leg 2 with the gantry at that end
        """;

    private static readonly char[] s_blanks = [' ', '\t'];

    public static Outcome<VisitAction> Read(string line)
    {
        string[] words = line.Split(s_blanks, StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            ["fire", var leg, var path] => Number(path, p => new VisitAction.Fire(leg, p, null)),
            ["turn", var leg, var screw, .. var turns] when TurnsText.Read(string.Join(' ', turns)) is { } t => new VisitAction.Turn(leg, screw, t),
            ["survey", var x, var y] => Numbers(x, y, (a, b) => new VisitAction.Survey(Length.FromMillimetres(a), Length.FromMillimetres(b))),
            ["shim", var corner, var height] when Named<BedCorner>(corner) is { } at => Number(height, h => new VisitAction.Shim(at, Length.FromMillimetres(h))),
            ["move", var u, var v] => Numbers(u, v, (a, b) => new VisitAction.MoveTarget(new(a, b))),
            ["raise", var height] => Number(height, h => new VisitAction.RaiseTube(Length.FromMillimetres(h))),
            ["realign", var leg, var end] when Named<GantryEnd>(end) is { } at => new VisitAction.Realign(leg, at),
            _ => new Failure(PractisingFailures.ActionUnreadable, $"'{ListText.Shown(line.Trim())}' is no action", "write one like fire 1 480, turn 1 A 1/8 or survey 500 400; help lists them"),
        };
    }

    // By its name alone: a number names none.
    private static T? Named<T>(string name)
        where T : struct, Enum => Enum.GetNames<T>().Contains(name, StringComparer.OrdinalIgnoreCase) ? Enum.Parse<T>(name, ignoreCase: true) : null;

    private static Outcome<VisitAction> Number(string text, Func<double, VisitAction> action) => NumberText.Read(text).TryGet(out Number? number, out Failure? failure)
        ? Finite(number.Value) ?? (Outcome<VisitAction>)action(number.Value)
        : failure;

    private static Outcome<VisitAction> Numbers(string first, string second, Func<double, double, VisitAction> action)
    {
        if (!NumberText.Read(first).TryGet(out Number? a, out Failure? failure) || !NumberText.Read(second).TryGet(out Number? b, out failure))
            return failure;
        return Finite(a.Value) ?? Finite(b.Value) ?? (Outcome<VisitAction>)action(a.Value, b.Value);
    }

    private static Failure? Finite(double value) => Math.Abs(value) <= 1e6
        ? null
        : new(PractisingFailures.ActionUnreadable, "a number is beyond any machine's", "give mm, or turns");
}
