using System.CommandLine;
using System.CommandLine.Help;
using MarkReader.CommandLine;
using MarkReader.CommandLine.Commands;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;

// A RootCommand would be called by the program file's name, which nobody types.
Command root = new("tools/run", CommandTexts.Get("program.measuresBurnMarksOnTaped"))
{
    new HelpOption(), new VersionOption(),
    CardCommand.Create(), MeasureCommand.Create(), AimCommand.Create(), PropagateCommand.Create(), AuditCommand.Create(), InterimCommand.Create(),
    BoardCommand.Create(), CameraCommand.Create(), CheckCardCommand.Create(), StudyCommand.Create(), ScatterCommand.Create(),
    SurveyCommand.Create(), ShimsCommand.Create(), ApertureCommand.Create(), ScrewsCommand.Create(), AdviseCommand.Create(), RecordCommand.Create(), PracticeCommand.Create(),
};
Terminal terminal = new(Console.Out, Console.Error, args.Contains(CommonOptions.JsonName));
try
{
    ParseResult call = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
    return CallErrors.Of(call) is { } wrong ? terminal.Refuse(wrong) : call.Invoke(new() { EnableDefaultExceptionHandler = false });
}
catch (Exception fault)
{
    // The one place that turns a fault into a line: the exit status tells it from a refusal.
    return Faults.Report(terminal, fault);
}
