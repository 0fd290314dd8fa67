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
        Option<string> output = new("--out") { Description = "PDF file to write", HelpName = "FILE", Required = true };
        Option<string> paper = new("--paper") { Description = $"Page: {string.Join(", ", Paper.All.Select(p => p.Name))} (default {Paper.A4.Name})", HelpName = "NAME" };
        Command command = new("board", "Write the calibration board to print at 100 %, for the command 'camera'") { output, paper };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal();
            string file = call.GetRequiredValue(output);
            if (!Paper.Find(call.GetValue(paper) ?? Paper.A4.Name).TryGet(out Paper? page, out Failure? failure))
                return terminal.Refuse(failure);
            if (!file.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
                return terminal.Refuse(new(CommandLineFailures.ChoiceUnknown, "--out: the board is written as .pdf only", "name a file ending in .pdf"));
            if (OutputFile.Write(file, PrintBoard.Pdf(page)) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(CameraTexts.Say("board.line", file, CalibrationBoard.Sheet.Purpose));
            return ExitStatus.Done;
        });
        return command;
    }
}
