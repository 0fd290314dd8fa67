using System.CommandLine;
using MarkReader.Application.Measuring;
using MarkReader.Application.Overlays;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>measure PHOTO: the marks of one photo.</summary>
internal static class MeasureCommand
{
    public static Command Create()
    {
        Argument<string> photo = new("PHOTO") { Description = CommandTexts.Get("measureCommand.jpegPngOrWebpPhoto") };
        Option<bool> json = CommonOptions.Json();
        Option<string> overlay = CommonOptions.Overlay(CommandTexts.Get("measureCommand.marks"));
        Option<string> debug = CommonOptions.DebugDir();
        CardOptions card = new();
        Option<string[]> at = new("--at")
        {
            Description = CommandTexts.Get("measureCommand.measureMarkAtThisPlace"),
            HelpName = "X,Y",
        };
        Command command = new("measure", CommandTexts.Get("measureCommand.measureBurnMarksOnePhoto")) { photo, json, overlay, debug, at };
        foreach (Option option in card.All)
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if ((OverlayOutput.Read(call.GetValue(overlay), [call.GetValue(photo)], out OverlayOutput? drawing) ?? OutputFolder.Prepare(call.GetValue(debug), debug.Name)) is { } unusable)
                return terminal.Refuse(unusable);
            Numbers numbers = new(call);
            IReadOnlyList<PixelPoint> taps = numbers.ReadPlaces(at);
            if (numbers.Wrong is { } wrong)
                return terminal.Refuse(wrong);
            if (!card.Read(call, new(call.GetValue(debug)) { Taps = taps }).TryGet(out MeasureOptions? how, out Failure? failure))
                return terminal.Refuse(failure);
            if (!PhotoFile.Read(call.GetRequiredValue(photo)).TryGet(out PhotoFile? file, out failure))
                return terminal.Refuse(failure);
            if (!MeasurePhoto.Run(file.Bytes, how).TryGet(out PhotoMeasurement? measurement, out failure))
                return terminal.Refuse(failure);
            if (drawing?.Write(OverlayScenes.Of(measurement), file.Bytes) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(MeasureReport.From(measurement)) : MeasureText.Of(measurement));
            return ExitStatus.Done;
        });
        return command;
    }
}
