using System.CommandLine;
using MarkReader.Application.Cameras;
using MarkReader.Cards;
using MarkReader.CommandLine.Output;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>board --out FILE: the printable calibration board.</summary>
internal static class BoardCommand
{
    public static Command Create()
    {
        Option<string> output = new("--out") { Description = CommandTexts.Get("boardCommand.pdfFileWrite"), HelpName = "FILE", Required = true };
        Option<string> paper = new("--paper") { Description = CommandTexts.Say("boardCommand.pageDefault", string.Join(", ", Paper.All.Select(p => p.Name)), Paper.A4.Name), HelpName = "NAME" };
        Command command = new("board", CommandTexts.Get("boardCommand.writeCalibrationBoardPrintAt")) { output, paper };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal();
            string file = call.GetRequiredValue(output);
            if (!Paper.Find(call.GetValue(paper) ?? Paper.A4.Name).TryGet(out Paper? page, out Failure? failure))
                return terminal.Refuse(failure);
            if (!file.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
                return terminal.Refuse(new(CommandLineFailures.ChoiceUnknown, CommandTexts.Get("boardCommand.outBoardWrittenAsPdf"), CommandTexts.Get("boardCommand.nameFileEndingInPdf")));
            if (OutputFile.Write(file, PrintBoard.Pdf(page)) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(CameraTexts.Say("board.line", file, CalibrationBoard.Sheet.Purpose));
            return ExitStatus.Done;
        });
        return command;
    }
}
