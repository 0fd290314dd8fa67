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
        Option<bool> auto = new("--auto") { Description = "Follow the advice to the end and print a report; without it, you say what is done" };
        Option<string> photos = new("--photos") { Description = "Photograph every mark into this folder and measure it in the photo", HelpName = "FOLDER" };
        Option<string> save = new("--save") { Description = "Write the visit to this file at the end; advise reads it", HelpName = "FILE" };
        Option<bool> json = CommonOptions.Json();
        Command command = new("practice", "Bring a simulated machine into alignment, step by step or in one go; no laser is needed");
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
