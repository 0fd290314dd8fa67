using System.CommandLine;
using MarkReader.Application.Cameras;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>camera PHOTO… --out FILE: a camera profile from photos of the calibration board.</summary>
internal static class CameraCommand
{
    public static Command Create()
    {
        Argument<string[]> photos = new("PHOTO") { Description = CommandTexts.Get("cameraCommand.photosCalibrationBoardByOne"), Arity = ArgumentArity.OneOrMore };
        Option<string> output = new("--out") { Description = CommandTexts.Get("cameraCommand.profileWriteJsonForCamera"), HelpName = "FILE", Required = true };
        Option<string> name = new("--name") { Description = CommandTexts.Get("cameraCommand.whatProfileCalledDefaultCamera"), HelpName = "TEXT" };
        Option<bool> json = CommonOptions.Json();
        Command command = new("camera", CommandTexts.Get("cameraCommand.calibrateCameraFromPhotosCalibration")) { photos, output, name, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            string file = call.GetRequiredValue(output);
            string[] paths = call.GetRequiredValue(photos);
            if ((OutputFile.Check(file) ?? Same(file, paths)) is { } unusable)
                return terminal.Refuse(unusable);
            PhotoProgress progress = new(terminal.Error);
            Failure? unread = null;
            Outcome<CameraFinding> outcome = CalibrateCamera.Run(call.GetValue(name) ?? "camera", DateTimeOffset.UtcNow, paths.Length, PhotoFile.OneByOne(paths, f => unread = f), done => progress.Tell(done, paths.Length));
            if (unread is not null)
                return terminal.Refuse(unread);
            if (!outcome.TryGet(out CameraFinding? finding, out Failure? failure))
                return terminal.Refuse(failure);
            if (OutputFile.Write(file, System.Text.Encoding.UTF8.GetBytes(CameraProfileFile.Write(finding.Profile))) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(CameraReport.Of(finding)) : CameraText.Of(finding, file));
            return ExitStatus.Done;
        });
        return command;
    }

    private static Failure? Same(string file, string[] photos) => photos.Any(p => Path.GetFullPath(p) == Path.GetFullPath(file))
        ? new(CommandLineFailures.OutputIsInput, CommandTexts.Word("cameraCommand.onePhotos", file), CommandTexts.Get("cameraCommand.nameAnotherFileWithOut"))
        : null;
}
