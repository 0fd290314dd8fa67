using System.Globalization;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Quantities;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A practice visit for people.</summary>
internal sealed class PracticeText(TextWriter output)
{
    public void Begin(int seed, PracticeSession session)
    {
        (Length x, Length y) = (session.Setup.Bed!.Travels.X, session.Setup.Bed.Travels.Y);
        output.WriteLine(Say("practice.practiceMachineTravelsBy", seed, x.Millimetres, y.Millimetres, session.Setup.Bed.Tolerance.Millimetres));
        output.WriteLine();
        output.WriteLine(Get("practice.onARealMachine"));
        output.WriteLine(Words.Cautions);
        output.WriteLine();
    }

    /// <param name="number">The step's number, from 1.</param>
    public void Advised(VisitAdvice advice, int number)
    {
        output.WriteLine(advice.Action is VisitAction.Done or VisitAction.Stop ? "     " + ActionWords.Of(advice.Action) : string.Create(CultureInfo.InvariantCulture, $"{number,3}. {ActionWords.Of(advice.Action)}"));
        output.WriteLine($"     {advice.Reason}");
        foreach (string warning in Words.Of(advice.Warnings))
            output.WriteLine($"     {warning}");
        // Where a step takes seconds, people see at once which one is on.
        output.Flush();
    }

    public void Done(PracticeStep step)
    {
        if (step.Mark is { Mark: MeasuredPoint at } mark)
            output.WriteLine(Say("practice.markUVMm", Words.Place(at.Point.U), Words.Place(at.Point.V), Words.Region95(at.Covariance), mark.Photo is { } photo ? $" ({photo})" : ""));
        else if (step.Action is not VisitAction.Realign)
            output.WriteLine(Get("practice.done"));
    }

    public void End(VisitAdvice last, Failure? refused, PracticeSession session)
    {
        if (refused is not null)
            output.WriteLine(Say("practice.notDone", refused));
        IReadOnlyList<PracticeStep> steps = session.Steps;
        int Count(Func<VisitAction, bool> of) => steps.Count(s => of(s.Action));
        Table table = new(Get("practice.whatWasDone"), Get("practice.leg1"), Get("practice.leg2"), Get("practice.bed"));
        table.Add([Get("practice.pulses"), .. Legs(leg => Count(a => a is VisitAction.Fire f && f.Leg == leg)), Whole(Count(a => a is VisitAction.Survey))]);
        table.Add([Get("practice.turnsOfAScrew"), .. Legs(leg => Count(a => a is VisitAction.Turn t && t.Leg == leg)), "-"]);
        table.Add(Get("practice.shimsMovesOfThe"), "-", "-", Whole(Count(a => a is VisitAction.Shim or VisitAction.MoveTarget or VisitAction.RaiseTube)));
        output.WriteLine();
        output.WriteLine(table.ToString());
        output.WriteLine();
        output.WriteLine(AdviceText.State(last.State));
        output.WriteLine(Say("practice.trueSpreadOverThe", Spread(session.TrueSpread(before: true)), Spread(session.TrueSpread())));
    }

    private static string[] Legs(Func<string, int> count) => [Whole(count(VisitLeg.One)), Whole(count(VisitLeg.Two))];

    private static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Spread(Length? spread) => spread is { } s ? Words.Fixed(s.Millimetres, 2) + " mm" : Get("practice.theBeamIsLost");
}
