using System.CommandLine;
using MarkReader.Application.Auditing;
using MarkReader.Application.Reports;
using MarkReader.Cameras.Profiles;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>audit FOLDER: every photo with a truth file beside it.</summary>
internal static class AuditCommand
{
    public static Command Create()
    {
        Argument<string> folder = new("FOLDER") { Description = CommandTexts.Get("auditCommand.photosEachWithNameTruth") };
        Option<bool> json = CommonOptions.Json();
        Option<bool> photos = new("--photos") { Description = CommandTexts.Say("auditCommand.listEveryPhotoAlsoWhen", AuditText.MostListed) };
        Option<string> plot = new("--plot") { Description = CommandTexts.Get("auditCommand.writeErrorsCoverageAndDistances"), HelpName = "FILE" };
        Option<string> camera = CameraOption.Create();
        Command command = new("audit", CommandTexts.Get("auditCommand.measurePhotosWhoseMarksKnown")) { folder, json, photos, plot, camera };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            if (PlotOutput.Read(call.GetValue(plot), out PlotOutput? picture) is { } unusable)
                return terminal.Refuse(unusable);
            CameraProfile? profile = null;
            if (call.GetValue(camera) is { } named && !CameraOption.Read(named).TryGet(out profile, out Failure? unread))
                return terminal.Refuse(unread);
            if (!AuditFolder.Run(call.GetRequiredValue(folder), new PhotoProgress(terminal.Error).Tell, profile).TryGet(out Audit? audit, out Failure? failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(AuditReport.From(audit)) : AuditText.Of(audit, call.GetValue(photos)));
            // The measuring took long and its figures stand: what is wrong beside them comes after, without a second JSON.
            Failure? wrong = picture?.Write(audit) ?? audit.Photos.FirstOrDefault(p => !p.FilesAreSound)?.Refusal;
            return wrong is null ? ExitStatus.Done : (terminal with { Json = false }).Refuse(wrong);
        });
        return command;
    }
}
