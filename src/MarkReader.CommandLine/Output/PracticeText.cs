using System.Globalization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>A practice visit for people.</summary>
internal sealed class PracticeText(TextWriter output)
{
    public void Begin(int seed, PracticeSession session)
    {
        (Length x, Length y) = (session.Setup.Bed!.Travels.X, session.Setup.Bed.Travels.Y);
        output.WriteLine(Say($"Practice machine {seed}: travels {x.Millimetres:0} by {y.Millimetres:0} mm, tolerance {session.Setup.Bed.Tolerance.Millimetres:0.##} mm. It exists only in this program; nothing is fired."));
        output.WriteLine();
        output.WriteLine("On a real machine these go with every step:");
        output.WriteLine(Words.Cautions);
        output.WriteLine();
    }

    /// <param name="number">The step's number, from 1.</param>
    public void Advised(VisitAdvice advice, int number)
    {
        output.WriteLine(advice.Action is VisitAction.Done or VisitAction.Stop ? "     " + ActionWords.Of(advice.Action) : Say($"{number,3}. {ActionWords.Of(advice.Action)}"));
        output.WriteLine($"     {advice.Reason}");
        foreach (string warning in Words.Of(advice.Warnings))
            output.WriteLine($"     {warning}");
        // Where a step takes seconds, people see at once which one is on.
        output.Flush();
    }

    public void Done(PracticeStep step)
    {
        if (step.Mark is { Mark: MeasuredPoint at } mark)
            output.WriteLine($"     mark: u {Words.Place(at.Point.U)}, v {Words.Place(at.Point.V)} mm, region {Words.Region95(at.Covariance)} mm{(mark.Photo is { } photo ? $" ({photo})" : "")}");
        else if (step.Action is not VisitAction.Realign)
            output.WriteLine("     done");
    }

    public void End(VisitAdvice last, Failure? refused, PracticeSession session)
    {
        if (refused is not null)
            output.WriteLine($"     not done: {refused}");
        IReadOnlyList<PracticeStep> steps = session.Steps;
        int Count(Func<VisitAction, bool> of) => steps.Count(s => of(s.Action));
        Table table = new("what was done", "leg 1", "leg 2", "bed");
        table.Add(["pulses", .. Legs(leg => Count(a => a is VisitAction.Fire f && f.Leg == leg)), Whole(Count(a => a is VisitAction.Survey))]);
        table.Add(["turns of a screw", .. Legs(leg => Count(a => a is VisitAction.Turn t && t.Leg == leg)), "-"]);
        table.Add("shims, moves of the target, lifts of the tube", "-", "-", Whole(Count(a => a is VisitAction.Shim or VisitAction.MoveTarget or VisitAction.RaiseTube)));
        output.WriteLine();
        output.WriteLine(table.ToString());
        output.WriteLine();
        output.WriteLine(AdviceText.State(last.State));
        output.WriteLine($"true spread over the bed: before {Spread(session.TrueSpread(before: true))}, now {Spread(session.TrueSpread())}");
    }

    private static string[] Legs(Func<string, int> count) => [Whole(count(VisitLeg.One)), Whole(count(VisitLeg.Two))];

    private static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Spread(Length? spread) => spread is { } s ? Words.Fixed(s.Millimetres, 2) + " mm" : "the beam is lost somewhere";

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
