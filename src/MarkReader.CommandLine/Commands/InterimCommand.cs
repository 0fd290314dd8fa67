using System.CommandLine;
using System.Text;
using MarkReader.Application.Interim;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>interim: a set of photos measured again after an update of the program.</summary>
internal static class InterimCommand
{
    public static Command Create()
    {
        Argument<string> folder = new("FOLDER") { Description = CommandTexts.Get("interimCommand.folder") };
        Option<string> keep = new("--keep") { Description = CommandTexts.Get("interimCommand.keep"), HelpName = "FILE" };
        Option<string> against = new("--against") { Description = CommandTexts.Get("interimCommand.against"), HelpName = "FILE" };
        Option<bool> json = CommonOptions.Json();
        Command command = new("interim", CommandTexts.Get("interimCommand.about")) { folder, keep, against, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            (string? to, string? from) = (call.GetValue(keep), call.GetValue(against));
            if (to is null == from is null)
                return terminal.Refuse(new(to is null ? CommandLineFailures.OptionMissing : CommandLineFailures.OptionsConflict, CommandTexts.Get("interimCommand.oneOfTwo"), CommandTexts.Get("interimCommand.oneOfTwoHint")));
            if (to is not null && OutputFile.Check(to) is { } unusable)
                return terminal.Refuse(unusable);
            if (to is not null && File.Exists(to))
                return terminal.Refuse(new(CommandLineFailures.OutputNotWritable, CommandTexts.Word("interimCommand.exists", to), CommandTexts.Get("interimCommand.existsHint")));
            InterimRecord? before = null;
            if (from is not null && (!InputFile.Read(from, InterimFile.MostBytes, CommandTexts.Get("interimCommand.record"), CommandTexts.Get("interimCommand.recordHint")).TryGet(out InputFile? file, out Failure? failure)
                || !InterimFile.Read(file.Bytes).TryGet(out before, out failure)))
                return terminal.Refuse(failure);
            if (!InterimFolder.Measure(call.GetRequiredValue(folder), to is not null, new PhotoProgress(terminal.Error).Tell).TryGet(out InterimRecord? now, out failure))
                return terminal.Refuse(failure);
            return before is null ? Keep(terminal, now, to!) : Compare(terminal, InterimCheck.Of(before, now));
        });
        return command;
    }

    private static int Keep(Terminal terminal, InterimRecord record, string file)
    {
        if (OutputFile.Write(file, Encoding.UTF8.GetBytes(InterimFile.Write(record))) is { } notWritten)
            return terminal.Refuse(notWritten);
        terminal.Out.WriteLine(terminal.Json ? InterimFile.Write(record) : OutputTexts.Say("interim.kept", file, record.Photos.Count, record.Photos.Sum(p => p.Marks.Count), record.Program));
        return ExitStatus.Done;
    }

    private static int Compare(Terminal terminal, InterimCheck check)
    {
        terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(InterimReport.From(check)) : InterimText.Of(check));
        // The comparison stands on standard output; that something is flagged comes after it, without a second JSON.
        return check.Flagged == 0 ? ExitStatus.Done
            : (terminal with { Json = false }).Refuse(new(InterimFailures.Differs, InterimTexts.Word("differs", check.Flagged, check.Photos.Count), InterimTexts.Get("differs.hint")));
    }
}
