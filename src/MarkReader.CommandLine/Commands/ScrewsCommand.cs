using System.CommandLine;
using MarkReader.Application.Reports;
using MarkReader.Application.Screws;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>screws: the turns of a mirror frame's screws that take a slope away.</summary>
internal static class ScrewsCommand
{
    public static Command Create()
    {
        ScrewsOptions options = new();
        Option<bool> json = CommonOptions.Json();
        Command command = new("screws", CommandTexts.Get("screwsCommand.turnSlopeOrNearAnd"));
        foreach (Option option in (IEnumerable<Option>)[.. options.All, json])
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if (!options.Read(call).TryGet(out ScrewsRequest? request, out Failure? failure))
                return terminal.Refuse(failure);
            if (!FindScrewTurns.Run(request).TryGet(out ScrewsFinding? finding, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(ScrewsReport.From(finding)) : ScrewsText.Of(finding));
            return ExitStatus.Done;
        });
        return command;
    }
}
