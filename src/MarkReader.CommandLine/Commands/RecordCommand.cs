using System.CommandLine;
using MarkReader.Application.Records;
using MarkReader.Application.VisitLog;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>record: the record of a visit.</summary>
internal static class RecordCommand
{
    public static Command Create()
    {
        Option<string> visit = new("--visit") { Description = CommandTexts.Get("recordCommand.visitVisitFileJsonOr"), HelpName = "FILE", Required = true };
        Option<string> output = new("--out") { Description = CommandTexts.Get("recordCommand.fileWritePdfOrHtml"), HelpName = "FILE", Required = true };
        Option<string> unit = new("--unit") { Description = CommandTexts.Get("recordCommand.lengthsInPdfAndHtml"), HelpName = "NAME" };
        Option<string> separator = new("--decimal") { Description = CommandTexts.Get("recordCommand.decimalSignInPdfAnd"), HelpName = "NAME" };
        Option<string> paper = new("--paper") { Description = CommandTexts.Get("recordCommand.pagePdfOrLetterDefault"), HelpName = "NAME" };
        Option<string> by = new("--by") { Description = CommandTexts.Get("recordCommand.whoDidWorkInPlace"), HelpName = "NAME" };
        Command command = new("record", CommandTexts.Get("recordCommand.writeRecordVisitSignAnd")) { visit, output, unit, separator, paper, by };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal();
            string file = call.GetRequiredValue(output), path = call.GetRequiredValue(visit);
            if ((OutputFile.Check(file) ?? (SameFile(path, file) ? new Failure(CommandLineFailures.OutputIsInput, CommandTexts.Get("recordCommand.outNamesVisitItself"), CommandTexts.Get("recordCommand.nameAnotherFile")) : null)) is { } unusable)
                return terminal.Refuse(unusable);
            if (!RecordFormat.Read(call.GetValue(unit), call.GetValue(separator), TimeZoneInfo.Local).TryGet(out RecordFormat? format, out Failure? failure)
                || !Paper.Find(call.GetValue(paper) ?? Paper.A4.Name).TryGet(out Paper? page, out failure)
                || !RecordFile.Find(file).TryGet(out RecordFile? kind, out failure)
                || !VisitInput.Record(path, Name(call.GetValue(by))).TryGet(out VisitRecord? record, out failure))
                return terminal.Refuse(failure);
            if (OutputFile.Write(file, kind.Write(record, format, page)) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(CommandTexts.Say("recordCommand.marksPhotosVerdictWhole", file, record.Marks.Count, record.Photos.Count, Verdict(record)));
            return ExitStatus.Done;
        });
        return command;
    }

    private static string Verdict(VisitRecord record) => record.Verdict.Verdict.ToString().ToLowerInvariant();

    // The length that the service keeps.
    private static string? Name(string? by) => by is null ? null : string.Concat(by.Where(c => !char.IsControl(c)).Take(VisitDescription.LongestName)).Trim();

    private static bool SameFile(string a, string b) => string.Equals(Path.GetFullPath(a), Path.GetFullPath(b), StringComparison.Ordinal);
}
