using System.CommandLine;
using MarkReader.Application.Auditing;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>audit FOLDER: every photo with a truth file beside it.</summary>
internal static class AuditCommand
{
    public static Command Create()
    {
        Argument<string> folder = new("FOLDER") { Description = "Photos, each with a NAME.truth.json beside it" };
        Option<bool> json = CommonOptions.Json();
        Command command = new("audit", "Measure photos whose marks are known and compare: errors, missed and false marks, coverage") { folder, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if (!AuditFolder.Run(call.GetRequiredValue(folder)).TryGet(out Audit? audit, out Failure? failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(AuditReport.From(audit)) : AuditText.Of(audit));
            // A bad truth file is a wrong input; the rest of the table stands.
            return audit.Photos.FirstOrDefault(p => !p.FilesAreSound)?.Refusal is { } bad
                ? (terminal with { Json = false }).Refuse(bad)
                : ExitStatus.Done;
        });
        return command;
    }
}
