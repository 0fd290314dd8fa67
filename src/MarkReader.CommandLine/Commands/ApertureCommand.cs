using System.CommandLine;
using MarkReader.Application.Apertures;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>aperture: the power that passes an opening, and the beam's size from marks.</summary>
internal static class ApertureCommand
{
    public static Command Create()
    {
        ApertureOptions options = new();
        Option<bool> json = CommonOptions.Json();
        Command command = new("aperture", CommandTexts.Get("apertureCommand.workOutPowerThatPasses"));
        foreach (Option option in (IEnumerable<Option>)[.. options.All, json])
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if (!options.Read(call).TryGet(out ApertureRequest? request, out Failure? failure))
                return terminal.Refuse(failure);
            if (!FindTransmission.Run(request).TryGet(out ApertureFinding? finding, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(ApertureReport.From(finding)) : ApertureText.Of(finding));
            return ExitStatus.Done;
        });
        return command;
    }
}
