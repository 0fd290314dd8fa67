using MarkReader.Alignment.Visits;
using MarkReader.Application.Practising;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>A practice visit in which a person says what is done, line by line.</summary>
internal sealed class PracticeDialogue(Terminal terminal, TextReader input, int seed, PracticeSession session)
{
    private static string Help => CommandTexts.Say("practiceDialogue.enterDoWhatAdvisedState", ActionText.Usage);

    private readonly PracticeText _text = new(terminal.Out);

    public int Run()
    {
        _text.Begin(seed, session);
        terminal.Out.WriteLine(CommandTexts.Get("practiceDialogue.enterFollowsAdviceHelpLists"));
        for (bool changed = true; ;)
        {
            if (!session.Advise().TryGet(out VisitAdvice? advice, out Failure? failure))
            {
                // Only marks that no leg can have lead here.
                terminal.Out.WriteLine($"     {failure}");
                if (!session.Undo())
                    return terminal.Refuse(failure);
                terminal.Out.WriteLine(CommandTexts.Get("practiceDialogue.lastStepTakenBack"));
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
                terminal.Out.WriteLine(undone ? CommandTexts.Get("practiceDialogue.lastStepTakenBack") : CommandTexts.Get("practiceDialogue.nothingWasDoneYet"));
                return undone;
            case "" when advice.Action is VisitAction.Done or VisitAction.Stop:
                terminal.Out.WriteLine(advice.Action is VisitAction.Done ? CommandTexts.Get("practiceDialogue.nothingLeftDoQuitShows") : CommandTexts.Get("practiceDialogue.nothingAdvisedButLookWrite"));
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

        terminal.Out.WriteLine(CommandTexts.Say("practiceDialogue.notDone", failure));
        return false;
    }
}
