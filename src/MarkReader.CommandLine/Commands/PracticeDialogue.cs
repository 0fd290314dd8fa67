using MarkReader.Alignment.Visits;
using MarkReader.Application.Practising;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>A practice visit in which a person says what is done, line by line.</summary>
internal sealed class PracticeDialogue(Terminal terminal, TextReader input, int seed, PracticeSession session)
{
    private const string Help = $"""
        Enter                    do what is advised
        {ActionText.Usage}
        state                    what is known of the machine
        undo                     take the last step back
        quit                     end; the true spread is shown
        """;

    private readonly PracticeText _text = new(terminal.Out);

    public int Run()
    {
        _text.Begin(seed, session);
        terminal.Out.WriteLine("Enter follows the advice; help lists what else can be written, quit ends.");
        for (bool changed = true; ;)
        {
            if (!session.Advise().TryGet(out VisitAdvice? advice, out Failure? failure))
            {
                // Only marks that no leg can have lead here.
                terminal.Out.WriteLine($"     {failure}");
                if (!session.Undo())
                    return terminal.Refuse(failure);
                terminal.Out.WriteLine("     the last step is taken back");
                continue;
            }

            if (changed)
                _text.Advised(advice, session.Steps.Count + 1);
            terminal.Out.Write("> ");
            terminal.Out.Flush();
            if (input.ReadLine()?.Trim() is not { } line || line is "quit" or "exit")
            {
                terminal.Out.WriteLine();
                _text.End(advice, null, session);
                return ExitStatus.Done;
            }

            changed = Follow(line, advice);
        }
    }

    // Whether anything was done, so that the advice is to be said again.
    private bool Follow(string line, VisitAdvice advice)
    {
        switch (line)
        {
            case "help" or "?":
                terminal.Out.WriteLine(Help);
                return false;
            case "state":
                terminal.Out.WriteLine(AdviceText.State(advice.State));
                return false;
            case "undo":
                bool undone = session.Undo();
                terminal.Out.WriteLine(undone ? "     the last step is taken back" : "     nothing was done yet");
                return undone;
            case "" when advice.Action is VisitAction.Done or VisitAction.Stop:
                terminal.Out.WriteLine(advice.Action is VisitAction.Done ? "     Nothing is left to do; quit shows the result." : "     Nothing is advised but to look; write what you do, or quit.");
                return false;
            case "":
                return Do(advice.Action);
            default:
                if (ActionText.Read(line).TryGet(out VisitAction? action, out Failure? failure))
                    return Do(action);
                terminal.Out.WriteLine($"     {failure}");
                return false;
        }
    }

    private bool Do(VisitAction action)
    {
        if (session.Do(action).TryGet(out PracticeStep? step, out Failure? failure))
        {
            _text.Done(step);
            return true;
        }

        terminal.Out.WriteLine($"     not done: {failure}");
        return false;
    }
}
