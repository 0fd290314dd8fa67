using System.CommandLine;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Reports;
using MarkReader.Application.Shims;
using MarkReader.Application.Survey;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>survey: what the marks at the corners of the bed say.</summary>
internal static class SurveyCommand
{
    public static Command Create()
    {
        Option<string> marks = new("--marks")
        {
            Description = CommandTexts.Get("surveyCommand.fileWithMarksTableWhose"),
            HelpName = "FILE",
            Required = true,
        };
        Option<string> bed = new("--bed") { Description = CommandTexts.Get("surveyCommand.fullTravelsHeadAndGantry"), HelpName = "X,Y" };
        Option<string> tolerance = CommonOptions.Number(
            "--tolerance", CommandTexts.Say("surveyCommand.largestDistanceTwoMarksOver", SurveyRequest.DefaultTolerance));
        Option<string> stock = CommonOptions.Stock();
        Option<bool> json = CommonOptions.Json();
        Command command = new("survey", CommandTexts.Get("surveyCommand.findWhatKeepsMarksOver")) { marks, bed, tolerance, stock, json };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            Numbers numbers = new(call);
            (Travels? travels, Stock? pieces) = (numbers.ReadOptional(bed, TravelsText.Read), numbers.ReadOptional(stock, StockText.Read));
            double most = numbers.Read(tolerance, SurveyRequest.DefaultTolerance);
            if (numbers.Wrong is { } wrong)
                return terminal.Refuse(wrong);
            if (!Read(call.GetRequiredValue(marks)).TryGet(out SurveyMarks? survey, out Failure? failure))
                return terminal.Refuse(failure);
            if (!DiagnoseSurvey.Run(new(survey, travels, most, pieces)).TryGet(out SurveyAnswer? answer, out failure))
                return terminal.Refuse(travels is null && failure.Code == SurveyFailures.BedInvalid ? failure with { Hint = OutputTexts.Get("hint.bed") } : failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(SurveyReport.From(answer)) : SurveyText.Of(answer));
            return ExitStatus.Done;
        });
        return command;
    }

    private static Outcome<SurveyMarks> Read(string path)
    {
        if (!InputFile.Read(path, SurveyFile.MostBytes, CommandTexts.Get("surveyCommand.fileMarks"), CommandTexts.Get("surveyCommand.giveMarksOneSurveyOnly")).TryGet(out InputFile? file, out Failure? failure))
            return failure;
        return SurveyFile.Read(file.Bytes).TryGet(out SurveyMarks? marks, out failure) ? marks : failure with { Message = $"'{path}': {failure.Message}" };
    }
}
