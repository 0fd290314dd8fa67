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
        Option<string> visit = new("--visit") { Description = "The visit: a visit file (JSON), or a whole visit with its photos (ZIP) as the service hands it out", HelpName = "FILE", Required = true };
        Option<string> output = new("--out") { Description = "File to write: .pdf or .html to hand over, .csv or .json for the numbers", HelpName = "FILE", Required = true };
        Option<string> unit = new("--unit") { Description = "Lengths in .pdf and .html: mm or in (default mm)", HelpName = "NAME" };
        Option<string> separator = new("--decimal") { Description = "Decimal sign in .pdf and .html: point or comma (default point)", HelpName = "NAME" };
        Option<string> paper = new("--paper") { Description = "Page of a PDF: a4 or letter (default a4)", HelpName = "NAME" };
        Option<string> by = new("--by") { Description = "Who did the work; in place of the name that the visit has", HelpName = "NAME" };
        Command command = new("record", "Write the record of a visit, to sign and to hand over") { visit, output, unit, separator, paper, by };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal();
            string file = call.GetRequiredValue(output), path = call.GetRequiredValue(visit);
            if ((OutputFile.Check(file) ?? (SameFile(path, file) ? new Failure(CommandLineFailures.OutputIsInput, "--out names the visit itself", "name another file") : null)) is { } unusable)
                return terminal.Refuse(unusable);
            if (!RecordFormat.Read(call.GetValue(unit), call.GetValue(separator), TimeZoneInfo.Local).TryGet(out RecordFormat? format, out Failure? failure)
                || !Paper.Find(call.GetValue(paper) ?? Paper.A4.Name).TryGet(out Paper? page, out failure)
                || !RecordFile.Find(file).TryGet(out RecordFile? kind, out failure)
                || !VisitInput.Record(path, Name(call.GetValue(by))).TryGet(out VisitRecord? record, out failure))
                return terminal.Refuse(failure);
            if (OutputFile.Write(file, kind.Write(record, format, page)) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine($"{file}: {record.Marks.Count} marks, {record.Photos.Count} photos; verdict of the whole: {Verdict(record)}");
            return ExitStatus.Done;
        });
        return command;
    }

    private static string Verdict(VisitRecord record) => record.Verdict.Verdict.ToString().ToLowerInvariant();

    // The length that the service keeps.
    private static string? Name(string? by) => by is null ? null : string.Concat(by.Where(c => !char.IsControl(c)).Take(VisitDescription.LongestName)).Trim();

    private static bool SameFile(string a, string b) => string.Equals(Path.GetFullPath(a), Path.GetFullPath(b), StringComparison.Ordinal);
}
