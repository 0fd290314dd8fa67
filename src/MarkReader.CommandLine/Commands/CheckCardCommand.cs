using System.CommandLine;
using MarkReader.Application.CardChecks;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Cameras.Profiles;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>checkcard PHOTO… --camera FILE: whether a printed card is flat and true to scale.</summary>
internal static class CheckCardCommand
{
    public static Command Create()
    {
        Argument<string[]> photos = new("PHOTO") { Description = CommandTexts.Get("checkCard.photos"), Arity = ArgumentArity.OneOrMore };
        Option<string> camera = CameraOption.Create();
        camera.Required = true;
        Option<string> rulerU = CommonOptions.Number("--ruler-u", CommandTexts.Get("cardOptions.measuredLengthCardLowerPrinted"));
        Option<string> rulerV = CommonOptions.Number("--ruler-v", CommandTexts.Get("cardOptions.sameUprightRuler"));
        Option<string> uncertainty = CommonOptions.Number("--ruler-uncertainty", CommandTexts.Say("cardOptions.standardUncertaintyEachRulerLength", CardInput.DefaultRulerUncertainty));
        Option<string> tolerance = CommonOptions.Number("--tolerance", CommandTexts.Say("checkCard.tolerance", CardCheckInput.UsualLimit));
        Option<string> plot = new("--plot") { Description = CommandTexts.Get("checkCard.plot"), HelpName = "FILE" };
        Option<bool> json = CommonOptions.Json();
        Command command = new("checkcard", CommandTexts.Get("checkCard.what")) { photos, camera, rulerU, rulerV, uncertainty, tolerance, plot, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            Numbers numbers = new(call);
            CardCheckInput input = new(numbers.ReadOptional(rulerU), numbers.ReadOptional(rulerV), numbers.ReadOptional(uncertainty), numbers.ReadOptional(tolerance));
            if (numbers.Wrong is { } wrong)
                return terminal.Refuse(wrong);
            if (PlotOutput.Read(call.GetValue(plot), out PlotOutput? picture) is { } unusable)
                return terminal.Refuse(unusable);
            if (!CameraOption.Read(call.GetRequiredValue(camera)).TryGet(out CameraProfile? profile, out Failure? failure))
                return terminal.Refuse(failure);
            string[] paths = call.GetRequiredValue(photos);
            PhotoProgress progress = new(terminal.Error);
            Failure? unread = null;
            Outcome<CardFinding> outcome = CheckCard.Run(paths.Length, PhotoFile.OneByOne(paths, f => unread = f), profile, input, done => progress.Tell(done, paths.Length));
            if (unread is not null)
                return terminal.Refuse(unread);
            if (!outcome.TryGet(out CardFinding? finding, out failure))
                return terminal.Refuse(failure);
            CardCheckReport report = CardCheckReport.Of(finding);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(report) : CheckCardText.Of(report));
            return picture?.Write(CardCheckPicture.Of(report)) is { } notWritten ? (terminal with { Json = false }).Refuse(notWritten) : ExitStatus.Done;
        });
        return command;
    }
}
