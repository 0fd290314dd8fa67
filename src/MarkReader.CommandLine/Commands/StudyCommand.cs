using System.CommandLine;
using MarkReader.Application.Reports;
using MarkReader.Application.Studies;
using MarkReader.CommandLine.Input;
using MarkReader.CommandLine.Output;
using MarkReader.Imaging.Pipeline;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>study FOLDER: how well marks can be read again, by the same person and by another.</summary>
internal static class StudyCommand
{
    private const int UsualMarks = 5;

    public static Command Create()
    {
        Argument<string?> folder = new("FOLDER") { Description = CommandTexts.Get("studyCommand.folderForEachPersonOr"), Arity = ArgumentArity.ZeroOrOne };
        Option<string> readings = new("--readings") { Description = CommandTexts.Get("studyCommand.inPlacePhotosTableWhose"), HelpName = "FILE" };
        Option<bool> perPhoto = new("--per-photo") { Description = CommandTexts.Get("studyCommand.withReadingsRowsWithSame") };
        Option<bool> plan = new("--plan") { Description = CommandTexts.Get("studyCommand.sayHowManyPeopleAnd") };
        Option<string> marks = CommonOptions.Number("--marks", CommandTexts.Say("studyCommand.withPlanMarksThatEach", UsualMarks), "COUNT");
        Option<string> width = CommonOptions.Number("--width", CommandTexts.Say("studyCommand.wantedHalfWidthIntervalAs", StudyRequest.UsualWidth), "PART");
        Option<string> tolerance = CommonOptions.Number("--tolerance", CommandTexts.Say("studyCommand.largestDistanceMarkFromWhere", StudyRequest.UsualTolerance.Millimetres));
        Option<string> pool = CommonOptions.Number("--pool", CommandTexts.Say("studyCommand.poolInteractionWhenPAbove", GaugeOptions.Default.PoolAbove), "P");
        Option<string> against = new("--f-against") { Description = CommandTexts.Get("studyCommand.whatMarksAndPeopleTested"), HelpName = "NAME" };
        Option<bool> anova = new("--anova") { Description = CommandTexts.Get("studyCommand.printTablesVarianceAndStudy") };
        Option<bool> json = CommonOptions.Json();
        (ReportOptions report, CardOptions card) = (new(CommandTexts.Get("common.writeReportWithPicturesPdf")), new());
        Command command = new("study", CommandTexts.Get("studyCommand.studyRepeatabilityAndReproducibilitySame"))
        {
            folder, readings, perPhoto, plan, marks, width, tolerance, pool, against, anova, json,
        };
        foreach (Option option in report.All.Concat(card.All))
            command.Options.Add(option);
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal(json);
            Numbers numbers = new(call);
            (double half, double limit, double count) = (numbers.Read(width, StudyRequest.UsualWidth), numbers.Read(pool, GaugeOptions.Default.PoolAbove), numbers.Read(marks, UsualMarks));
            double most = numbers.Read(tolerance, StudyRequest.UsualTolerance.Millimetres);
            if ((numbers.Wrong ?? Finite(most)) is { } wrong)
                return terminal.Refuse(wrong);
            (string? place, string? table) = (call.GetValue(folder), call.GetValue(readings));
            if (call.GetValue(plan))
                return Plan(terminal, half, count);
            if ((place is null) == (table is null))
                return terminal.Refuse(new(place is null ? CommandLineFailures.ArgumentMissing : CommandLineFailures.OptionsConflict, CommandTexts.Get("studyCommand.readingsStudyComeFromFolder"), CommandTexts.Get("studyCommand.giveOneThemOrPlan")));
            if (report.Read(call, out DocumentOutput? pdf) is { } unusable)
                return terminal.Refuse(unusable);
            if (!Denominator(call.GetValue(against)).TryGet(out Against? denominator, out Failure? failure)
                || !card.Read(call, new()).TryGet(out MeasureOptions? how, out failure)
                || !(table is not null ? FromTable(table, call.GetValue(perPhoto)) : StudyFolder.Read(place!, how, new PhotoProgress(terminal.Error).Tell)).TryGet(out StudyReadings? all, out failure)
                || !RunStudy.Run(new(all, Length.FromMillimetres(most), limit, denominator.Of, half)).TryGet(out StudyAnswer? answer, out failure))
                return terminal.Refuse(failure);
            terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(StudyReport.From(answer)) : StudyText.Of(answer, call.GetValue(anova)));
            // The figures stand: what is wrong beside them comes after, without a second JSON.
            return pdf?.Write(StudyDocument.Of(answer, DateTimeOffset.Now)) is { } notWritten ? (terminal with { Json = false }).Refuse(notWritten) : ExitStatus.Done;
        });
        return command;
    }

    private static int Plan(Terminal terminal, double width, double marks)
    {
        if (!StudyPlan.For(width, marks is >= 0 and <= int.MaxValue && marks == Math.Floor(marks) ? (int)marks : 0, ExpectedShares.Usual).TryGet(out StudyPlan? plan, out Failure? failure))
            return terminal.Refuse(failure);
        terminal.Out.WriteLine(terminal.Json ? ReportJson.Write(StudyPlanReport.From(plan)) : StudyText.Of(plan));
        return ExitStatus.Done;
    }

    private static Outcome<StudyReadings> FromTable(string path, bool photos)
    {
        if (!InputFile.Read(path, ReadingsFile.MostBytes, CommandTexts.Get("studyCommand.tableReadings"), CommandTexts.Get("studyCommand.giveReadingsOneStudyOnly")).TryGet(out InputFile? file, out Failure? failure))
            return failure;
        return ReadingsFile.Study(file.Bytes, photos).TryGet(out StudyReadings? readings, out failure) ? readings : failure with { Message = $"'{path}': {failure.Message}" };
    }

    private static Outcome<Against> Denominator(string? name) => name switch
    {
        null or "interaction" => new Against(AnovaDenominator.Interaction),
        "repeatability" => new Against(AnovaDenominator.Repeatability),
        _ => new Failure(CommandLineFailures.ChoiceUnknown, CommandTexts.Word("studyCommand.fAgainstThereNo", name), CommandTexts.Get("studyCommand.writeInteractionOrRepeatability")),
    };

    private static Failure? Finite(double mm) => double.IsFinite(mm) ? null : new(StudyInputFailures.LengthInvalid, CommandTexts.Get("studyCommand.toleranceNotFiniteNumber"), CommandTexts.Get("studyCommand.giveInMmSuchAs"));

    private sealed record Against(AnovaDenominator Of);
}
