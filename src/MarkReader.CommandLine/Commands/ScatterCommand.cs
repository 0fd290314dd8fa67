using System.CommandLine;
using MarkReader.Application.Reports;
using MarkReader.Application.Studies;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>scatter PHOTO…: how far repeated pulses scatter.</summary>
internal static class ScatterCommand
{
    public static Command Create()
    {
        Argument<string[]> photos = new("PHOTO") { Description = CommandTexts.Get("scatterCommand.photosMarksRepeatedPulsesAt"), Arity = ArgumentArity.ZeroOrMore };
        Option<string> readings = new("--readings") { Description = CommandTexts.Get("scatterCommand.inPlacePhotosTableWhose"), HelpName = "FILE" };
        Option<string> path = CommonOptions.Number("--path", CommandTexts.Get("scatterCommand.lengthBeamPathFromSource"));
        Option<string> width = CommonOptions.Number("--width", CommandTexts.Say("scatterCommand.wantedHalfWidthIntervalAs", RunScatter.UsualWidth), "PART");
        Option<bool> json = CommonOptions.Json();
        (ReportOptions report, CardOptions card) = (new(CommandTexts.Get("common.writeReportWithPicturesPdf")), new());
        Command command = new("scatter", CommandTexts.Get("scatterCommand.workOutHowFarRepeated")) { photos, readings, path, width, json };
        foreach (Option option in report.All.Concat(card.All))
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            Numbers numbers = new(call);
            (double? length, double half) = (numbers.ReadOptional(path), numbers.Read(width, RunScatter.UsualWidth));
            if ((numbers.Wrong ?? (length is { } l && !double.IsFinite(l) ? new Failure(StudyInputFailures.LengthInvalid, CommandTexts.Get("scatterCommand.pathNotFiniteNumber"), CommandTexts.Get("scatterCommand.giveInMm")) : null)) is { } wrong)
                return terminal.Refuse(wrong);
            string[] files = call.GetValue(photos) ?? [];
            string? table = call.GetValue(readings);
            if ((files.Length == 0) == (table is null))
                return terminal.Refuse(new(table is null ? CommandLineFailures.ArgumentMissing : CommandLineFailures.OptionsConflict, CommandTexts.Get("scatterCommand.marksComeFromPhotosOr"), CommandTexts.Get("scatterCommand.giveOneThem")));
            if (report.Read(call, out DocumentOutput? pdf) is { } unusable)
                return terminal.Refuse(unusable);
            if (!card.Read(call, new()).TryGet(out MeasureOptions? how, out Failure? failure)
                || !(table is not null ? FromTable(table) : RunScatter.FromPhotos(files, how, new PhotoProgress(terminal.Error).Tell)).TryGet(out PulseMarks? marks, out failure)
                || !RunScatter.Run(marks, length is { } mm ? Length.FromMillimetres(mm) : null, half).TryGet(out ScatterAnswer? answer, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(ScatterReport.From(answer)) : ScatterText.Of(answer));
            return pdf?.Write(ScatterDocument.Of(answer, DateTimeOffset.Now)) is { } notWritten ? (terminal with { Json = false }).Refuse(notWritten) : ExitStatus.Done;
        });
        return command;
    }

    private static Outcome<PulseMarks> FromTable(string path)
    {
        if (!InputFile.Read(path, ReadingsFile.MostBytes, CommandTexts.Get("scatterCommand.tableMarks"), CommandTexts.Get("scatterCommand.givePulsesOneStationOnly")).TryGet(out InputFile? file, out Failure? failure))
            return failure;
        return ReadingsFile.Pulses(file.Bytes).TryGet(out PulseMarks? marks, out failure) ? marks : failure with { Message = $"'{path}': {failure.Message}" };
    }
}
