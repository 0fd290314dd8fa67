using MarkReader.Alignment.Survey;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Inputs;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>Reads what a person wants to do on a practice machine, one line an action.</summary>
public static class ActionText
{
    /// <summary>The lines that are read.</summary>
    public static string Usage => InputTexts.Get("actionText.fireLegPathOnePulse");

    private const double MostTurns = 100;

    private static readonly char[] s_blanks = [' ', '\t'];

    public static Outcome<VisitAction> Read(string line)
    {
        string[] words = line.Split(s_blanks, StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            ["fire", var leg, var path] => Number(path, p => new VisitAction.Fire(leg, p, null)),
            ["turn", var leg, var screw, .. var turns] when TurnsText.Read(string.Join(' ', turns)) is { } t and >= -MostTurns and <= MostTurns => new VisitAction.Turn(leg, screw, t),
            ["survey", var x, var y] => Numbers(x, y, (a, b) => new VisitAction.Survey(Length.FromMillimetres(a), Length.FromMillimetres(b))),
            ["shim", var corner, var height] when Named<BedCorner>(corner) is { } at => Number(height, h => new VisitAction.Shim(at, Length.FromMillimetres(h))),
            ["move", var u, var v] => Numbers(u, v, (a, b) => new VisitAction.MoveTarget(new(a, b))),
            ["raise", var height] => Number(height, h => new VisitAction.RaiseTube(Length.FromMillimetres(h))),
            ["realign", var leg, var end] when Named<GantryEnd>(end) is { } at => new VisitAction.Realign(leg, at),
            _ => new Failure(PractisingFailures.ActionUnreadable, InputTexts.Word("actionText.noAction", ListText.Shown(line.Trim())), InputTexts.Get("actionText.writeOneLikeFireTurn")),
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
        : new(PractisingFailures.ActionUnreadable, InputTexts.Get("actionText.numberBeyondAnyMachine"), InputTexts.Get("actionText.giveMmOrTurns"));
}
