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
        CardOptions card = new();
        Option<string[]> at = new("--at")
        {
            Description = "Measure the mark at this place of the photo, in pixels, whatever else is there; may be given several times",
            HelpName = "X,Y",
        };
        Command command = new("measure", "Measure the burn marks of one photo, in mm in the card's frame") { photo, json, overlay, debug, at };
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
