using System.CommandLine;
using MarkReader.Application.Propagating;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>propagate: the uncertainty of an aim point by Monte Carlo, beside the linear one.</summary>
internal static class PropagateCommand
{
    private const int LeastTrials = 10_000, MostTrials = 5_000_000, UsualSeed = 1;

    public static Command Create()
    {
        AimOptions options = new();
        Option<bool> json = CommonOptions.Json();
        Option<string> trials = CommonOptions.Number("--trials", CommandTexts.Say("propagateCommand.numberRandomDrawsDefault", PropagateAim.UsualTrials), "N");
        Option<string> seed = CommonOptions.Number("--seed", CommandTexts.Say("propagateCommand.seedDrawsDefault", UsualSeed), "N");
        Command command = new("propagate", CommandTexts.Get("propagateCommand.checkUncertaintyAimPointBy"));
        foreach (Option option in (IEnumerable<Option>)[.. options.All, trials, seed, json])
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if (!ReadPlan(call, trials, seed).TryGet(out Plan? plan, out Failure? failure))
                return terminal.Refuse(failure);
            if (!options.Read(call).TryGet(out AimRequest? request, out failure))
                return terminal.Refuse(failure);
            if (!PropagateAim.Run(request.Photos, request.Leg, request.How, plan).TryGet(out AimPropagation? propagation, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(PropagationReport.From(propagation)) : PropagationText.Of(propagation));
            return ExitStatus.Done;
        });
        return command;
    }

    private static Outcome<Plan> ReadPlan(ParseResult call, Option<string> trials, Option<string> seed)
    {
        Numbers numbers = new(call);
        (double count, double start) = (numbers.Read(trials, PropagateAim.UsualTrials), numbers.Read(seed, UsualSeed));
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (!(count >= LeastTrials && count <= MostTrials && Math.Floor(count) == count))
            return new Failure(CommandLineFailures.TrialsInvalid, CommandTexts.Get("propagateCommand.trialsNotWholeNumberFrom"), CommandTexts.Get("propagateCommand.leaveOutForDraws"));
        return start >= 0 && start <= int.MaxValue && Math.Floor(start) == start
            ? new Plan((int)count, (int)start)
            : new Failure(CommandLineFailures.SeedInvalid, CommandTexts.Get("propagateCommand.seedNotWholeNumberFrom"), CommandTexts.Get("propagateCommand.leaveOutForUsualDraws"));
    }
}
