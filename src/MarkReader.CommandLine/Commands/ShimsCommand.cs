using System.CommandLine;
using MarkReader.Application.Reports;
using MarkReader.Application.Shims;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>shims: the washers that make a height.</summary>
internal static class ShimsCommand
{
    public static Command Create()
    {
        Option<string> height = CommonOptions.Number("--height", CommandTexts.Get("shimsCommand.heightReachMm"));
        height.Required = true;
        Option<string> tolerance = CommonOptions.Number(
            "--tolerance", CommandTexts.Say("shimsCommand.howFarFromStackMay", StackRequest.DefaultTolerance));
        Option<string> stock = CommonOptions.Stock();
        Option<bool> json = CommonOptions.Json();
        Command command = new("shims", CommandTexts.Get("shimsCommand.findStackWashersAndSheets")) { height, tolerance, stock, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            Numbers numbers = new(call);
            StackRequest request = new(numbers.Read(height), numbers.Read(tolerance, StackRequest.DefaultTolerance), numbers.ReadOptional(stock, StockText.Read));
            if (numbers.Wrong is { } wrong)
                return terminal.Refuse(wrong);
            if (!FindShims.Run(request).TryGet(out StackFinding? finding, out Failure? failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(ShimsReport.From(finding)) : ShimsText.Of(finding, isUsual: request.Stock is null));
            return ExitStatus.Done;
        });
        return command;
    }
}
