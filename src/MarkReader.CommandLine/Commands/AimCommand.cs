using System.CommandLine;
using MarkReader.Application.Aiming;
using MarkReader.Application.Budgets;
using MarkReader.Application.Overlays;
using MarkReader.Application.Records;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>aim: the aim point of a leg from its near and far mark.</summary>
internal static class AimCommand
{
    public static Command Create()
    {
        AimOptions options = new();
        Option<bool> json = CommonOptions.Json();
        Option<string> overlay = CommonOptions.Overlay(CommandTexts.Get("aimCommand.nearMarkFarMarkAnd"));
        Option<string> debug = CommonOptions.DebugDir();
        ReportOptions report = new(CommandTexts.Get("aimCommand.explainUncertaintyInPdf"));
        Command command = new("aim", CommandTexts.Get("aimCommand.workOutAimPointLeg"));
        foreach (Option option in (IEnumerable<Option>)[.. options.All, json, overlay, debug, .. report.All])
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            DocumentOutput? document = null;
            if ((OverlayOutput.Read(call.GetValue(overlay), options.PhotoNames(call), out OverlayOutput? drawing) ?? OutputFolder.Prepare(call.GetValue(debug), debug.Name) ?? report.Read(call, out document)) is { } unusable)
                return terminal.Refuse(unusable);
            if (!options.Read(call).TryGet(out AimRequest? request, out Failure? failure))
                return terminal.Refuse(failure);
            if (!FindAim.Run(request.Photos, request.Leg, request.How with { DebugDirectory = call.GetValue(debug) }).TryGet(out AimFinding? finding, out failure))
                return terminal.Refuse(failure);
            if (drawing?.Write(OverlayScenes.Of(finding), request.Photos.WithFarMark) is { } notWritten)
                return terminal.Refuse(notWritten);
            AimReport answer = AimReport.From(finding);
            AimToExplain explained = new(answer, AimToExplain.Photos(options.PhotoNames(call).OfType<string>()), DateTimeOffset.UtcNow, ProgramVersion.Current);
            if (document is not null && BudgetDocument.Of(explained, RecordFormat.Plain) is { } pages && document.Write(pages) is { } noDocument)
                return terminal.Refuse(noDocument);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(answer) : AimText.Of(finding));
            return ExitStatus.Done;
        });
        return command;
    }
}
