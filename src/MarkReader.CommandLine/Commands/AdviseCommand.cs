using System.CommandLine;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>advise: the next action of a visit.</summary>
internal static class AdviseCommand
{
    public static Command Create()
    {
        Option<string> visit = new("--visit") { Description = "JSON file with the machine and the events of the visit so far", HelpName = "FILE", Required = true };
        Option<bool> json = CommonOptions.Json();
        Command command = new("advise", "Say what to do next on a visit: fire, turn a screw, survey, shim, move, done") { visit, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            string path = call.GetRequiredValue(visit);
            if (!InputFile.Read(path, VisitFile.MostBytes, "a visit file", "give one visit only").TryGet(out InputFile? file, out Failure? failure))
                return terminal.Refuse(failure);
            if (!AdviseVisit.Run(file.Bytes).TryGet(out VisitAdvice? advice, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(VisitReport.From(advice)) : AdviceText.Of(advice));
            return ExitStatus.Done;
        });
        return command;
    }
}
