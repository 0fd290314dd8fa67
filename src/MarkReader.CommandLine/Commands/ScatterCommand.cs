using System.CommandLine;
using System.Globalization;
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
        Argument<string[]> photos = new("PHOTO") { Description = "Photos of marks of repeated pulses at one station, the card left in its place", Arity = ArgumentArity.ZeroOrMore };
        Option<string> readings = new("--readings") { Description = "In place of photos a table whose first line is u,v and perhaps uncertainty, in mm, a line for each pulse", HelpName = "FILE" };
        Option<string> path = CommonOptions.Number("--path", "Length of the beam's path from the source mirror to the target, mm, for the angular stability");
        Option<string> width = CommonOptions.Number("--width", string.Create(CultureInfo.InvariantCulture, $"Wanted half-width of the 95 % interval, as a part of the standard deviation (default {RunScatter.UsualWidth})"), "PART");
        Option<bool> json = CommonOptions.Json();
        (ReportOptions report, CardOptions card) = (new(), new());
        Command command = new("scatter", "Work out how far repeated pulses scatter, for the machine's file: the type A part of a mark's uncertainty") { photos, readings, path, width, json };
        foreach (Option option in report.All.Concat(card.All))
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            Numbers numbers = new(call);
            (double? length, double half) = (numbers.ReadOptional(path), numbers.Read(width, RunScatter.UsualWidth));
            if ((numbers.Wrong ?? (length is { } l && !double.IsFinite(l) ? new Failure(StudyInputFailures.LengthInvalid, "the path is not a finite number", "give it in mm") : null)) is { } wrong)
                return terminal.Refuse(wrong);
            string[] files = call.GetValue(photos) ?? [];
            string? table = call.GetValue(readings);
            if ((files.Length == 0) == (table is null))
                return terminal.Refuse(new(table is null ? CommandLineFailures.ArgumentMissing : CommandLineFailures.OptionsConflict, "the marks come from photos or from --readings FILE", "give one of them"));
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
        if (!InputFile.Read(path, ReadingsFile.MostBytes, "a table of marks", "give the pulses of one station only").TryGet(out InputFile? file, out Failure? failure))
            return failure;
        return ReadingsFile.Pulses(file.Bytes).TryGet(out PulseMarks? marks, out failure) ? marks : failure with { Message = $"'{path}': {failure.Message}" };
    }
}
