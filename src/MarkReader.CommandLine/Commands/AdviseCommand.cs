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
        Option<string> visit = new("--visit") { Description = CommandTexts.Get("adviseCommand.jsonFileWithMachineAnd"), HelpName = "FILE", Required = true };
        Option<bool> json = CommonOptions.Json();
        Command command = new("advise", CommandTexts.Get("adviseCommand.sayWhatDoNextOn")) { visit, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            string path = call.GetRequiredValue(visit);
            if (!InputFile.Read(path, VisitFile.MostBytes, CommandTexts.Get("common.visitFile"), CommandTexts.Get("common.giveOneVisitOnly")).TryGet(out InputFile? file, out Failure? failure))
                return terminal.Refuse(failure);
            if (!AdviseVisit.Run(file.Bytes).TryGet(out VisitAdvice? advice, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(VisitReport.From(advice)) : AdviceText.Of(advice));
            return ExitStatus.Done;
        });
        return command;
    }
}
