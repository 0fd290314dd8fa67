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
        Argument<string> photo = new("PHOTO") { Description = "A JPEG, PNG or WebP photo of a taped card" };
        Option<bool> json = CommonOptions.Json();
        Option<string> overlay = CommonOptions.Overlay("the marks");
        Option<string> debug = CommonOptions.DebugDir();
        Command command = new("measure", "Measure the burn marks of one photo, in mm in the card's frame") { photo, json, overlay, debug };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if ((OverlayOutput.Read(call.GetValue(overlay), [call.GetValue(photo)], out OverlayOutput? drawing) ?? DebugFolder.Prepare(call.GetValue(debug))) is { } unusable)
                return terminal.Refuse(unusable);
            if (!PhotoFile.Read(call.GetRequiredValue(photo)).TryGet(out PhotoFile? file, out Failure? failure))
                return terminal.Refuse(failure);
            if (!MeasurePhoto.Run(file.Bytes, new(call.GetValue(debug))).TryGet(out PhotoMeasurement? measurement, out failure))
                return terminal.Refuse(failure);
            if (drawing?.Write(OverlayScenes.Of(measurement), file.Bytes) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(MeasureReport.From(measurement)) : MeasureText.Of(measurement));
            return ExitStatus.Done;
        });
        return command;
    }
}
