using System.CommandLine;
using MarkReader.Application.Practising;
using MarkReader.Application.Reports;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>practice: a visit to a machine that exists only in this program.</summary>
internal static class PracticeCommand
{
    public static Command Create()
    {
        PracticeOptions options = new();
        Option<bool> auto = new("--auto") { Description = CommandTexts.Get("practiceCommand.followAdviceEndAndPrint") };
        Option<string> photos = new("--photos") { Description = CommandTexts.Get("practiceCommand.photographEveryMarkIntoThis"), HelpName = "FOLDER" };
        Option<string> save = new("--save") { Description = CommandTexts.Get("practiceCommand.writeVisitThisFileAt"), HelpName = "FILE" };
        Option<bool> json = CommonOptions.Json();
        Command command = new("practice", CommandTexts.Get("practiceCommand.bringSimulatedMachineIntoAlignment"));
        foreach (Option option in (IEnumerable<Option>)[.. options.All, auto, photos, save, json])
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            string? folder = call.GetValue(photos), file = call.GetValue(save);
            if ((OutputFolder.Prepare(folder, photos.Name) ?? (file is null ? null : OutputFile.Check(file))) is { } unusable)
                return terminal.Refuse(unusable);
            if (!options.Read(call).TryGet(out PracticeMachineChoice? choice, out Failure? failure)
                || !PracticeSession.Begin(choice.Request, choice.Stock.Items, Measurement(folder)).TryGet(out PracticeSession? session, out failure))
                return terminal.Refuse(failure);

            int status = terminal.Json || call.GetValue(auto)
                ? Play(terminal, choice.Request.Seed, session)
                : new PracticeDialogue(terminal, Console.In, choice.Request.Seed, session).Run();
            return file is not null && OutputFile.Write(file, System.Text.Encoding.UTF8.GetBytes(PracticeVisitFile.Write(session))) is { } notWritten
                ? terminal.Refuse(notWritten)
                : status;
        });
        return command;
    }

    private static IPracticeMeasurement Measurement(string? folder) => folder is null
        ? new StatedMarks()
        : new PhotographedMarks(PulsePhoto.Cards, (name, photo) => OutputFile.Write(Path.Combine(folder, name), photo));

    private static int Play(Terminal terminal, int seed, PracticeSession session)
    {
        PracticeText text = new(terminal.Json ? TextWriter.Null : terminal.Out);
        text.Begin(seed, session);
        if (!PlayPractice.Run(session, advice => text.Advised(advice, session.Steps.Count + 1), text.Done).TryGet(out PracticeEnd? end, out Failure? failure))
            return terminal.Refuse(failure);
        if (terminal.Json)
            terminal.Out.WriteLine(ReportJson.Write(PracticeReport.From(seed, session, end)));
        text.End(end.Last, end.Refused, session);
        return ExitStatus.Done;
    }
}
