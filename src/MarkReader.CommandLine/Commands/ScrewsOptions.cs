using System.CommandLine;
using MarkReader.Application.Aiming;
using MarkReader.Application.Screws;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options of screws and their reading: the slope and the leg. Those of the frame: <see cref="FrameOptions"/>.</summary>
internal sealed class ScrewsOptions
{
    private static string Combination => CommandTexts.Get("screwsOptions.giveSlopeOrNearAnd");

    private readonly Option<string> _slope = Pair("--slope", CommandTexts.Get("screwsOptions.slopeAlongUAndV"), "U,V");
    private readonly Option<string> _slopeUncertainty = CommonOptions.Number(
        "--slope-uncertainty", Default(CommandTexts.Get("screwsOptions.standardUncertaintyEachComponentMrad"), SlopeInput.Stated.DefaultUncertainty), "MRAD");
    private readonly Option<string> _near = Pair("--near", CommandTexts.Get("screwsOptions.insteadSlopeNearMarkMm"), "U,V");
    private readonly Option<string> _far = Pair("--far", CommandTexts.Get("screwsOptions.farMarkMmOnSame"), "U,V");
    private readonly Option<string> _markUncertainty = CommonOptions.Number(
        "--mark-uncertainty", Default(CommandTexts.Get("screwsOptions.standardUncertaintyEachMarksComponents"), SlopeInput.FromMarks.DefaultUncertainty));
    private readonly Option<string> _nearPath = CommonOptions.Number("--near-path", CommandTexts.Get("common.pathLengthFromSourceMirror"));
    private readonly Option<string> _farPath = CommonOptions.Number("--far-path", CommandTexts.Get("common.sameAtFarStationMm"));
    private readonly Option<string> _pathUncertainty = CommonOptions.Number(
        "--path-uncertainty", Default(CommandTexts.Get("screwsOptions.standardUncertaintyEachPathLength"), LegInput.DefaultPathUncertainty));
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--incidence", CommandTexts.Get("common.angleBetweenBeamAndTarget"), "DEGREES");
    private readonly Option<string> _tolerance = CommonOptions.Number(
        "--tolerance", Default(CommandTexts.Get("screwsOptions.largestSpreadMarksOverTravel"), ScrewsRequest.DefaultTolerance));

    private readonly FrameOptions _frame = new();

    public IReadOnlyList<Option> All =>
        [_slope, _slopeUncertainty, _near, _far, _markUncertainty, _nearPath, _farPath, _pathUncertainty, _incidence, _tolerance, .. _frame.All];

    public Outcome<ScrewsRequest> Read(ParseResult call)
    {
        Numbers numbers = new(call);
        Components? slope = numbers.ReadOptional(_slope, FrameTexts.Components);
        (Components? near, Components? far) = (numbers.ReadOptional(_near, FrameTexts.Components), numbers.ReadOptional(_far, FrameTexts.Components));
        double? slopeUncertainty = numbers.ReadOptional(_slopeUncertainty), markUncertainty = numbers.ReadOptional(_markUncertainty);
        (double? nearPath, double? farPath, double? tolerance) = (numbers.ReadOptional(_nearPath), numbers.ReadOptional(_farPath), numbers.ReadOptional(_tolerance));
        (double pathUncertainty, double incidence) = (numbers.Read(_pathUncertainty, LegInput.DefaultPathUncertainty), numbers.Read(_incidence, 0));
        if (numbers.Wrong is { } wrong)
            return wrong;
        if ((Conflict(call) ?? MissingPath(call)) is { } unsound)
            return unsound;
        if (!_frame.Read(call).TryGet(out FrameInput? frame, out Failure? failure))
            return failure;
        return new ScrewsRequest(
            slope is not null
                ? new SlopeInput.Stated(slope.U, slope.V, slopeUncertainty ?? SlopeInput.Stated.DefaultUncertainty)
                : new SlopeInput.FromMarks(new(near!.U, near.V), new(far!.U, far.V), markUncertainty ?? SlopeInput.FromMarks.DefaultUncertainty),
            frame,
            nearPath is null ? null : new(nearPath.Value, farPath!.Value, pathUncertainty, incidence),
            tolerance ?? ScrewsRequest.DefaultTolerance);
    }

    private Failure? Conflict(ParseResult call)
    {
        if (Given(call, _slope))
            return First(call, _near, _far, _markUncertainty) is { } other ? new(CommandLineFailures.OptionsConflict, CommandTexts.Word("screwsOptions.slopeGivenTogetherWith", other.Name), Combination) : null;
        if (Given(call, _slopeUncertainty))
            return new(CommandLineFailures.OptionsConflict, CommandTexts.Get("screwsOptions.slopeUncertaintyGivenWithoutSlope"), Combination);
        if (First(call, _near, _far) is null)
            return new(CommandLineFailures.OptionMissing, CommandTexts.Get("screwsOptions.slopeMissing"), Combination);
        return FirstMissing(call, _near, _far, _nearPath, _farPath) is { } missing ? new(CommandLineFailures.OptionMissing, CommandTexts.Word("screwsOptions.missing", missing.Name), Combination) : null;
    }

    private Failure? MissingPath(ParseResult call) =>
        First(call, _nearPath, _farPath, _pathUncertainty, _incidence, _tolerance) is { } given && FirstMissing(call, _nearPath, _farPath) is { } missing
            ? new(CommandLineFailures.OptionMissing, CommandTexts.Word("screwsOptions.givenWithout", given.Name, missing.Name), CommandTexts.Get("screwsOptions.giveNearPathAndFar"))
            : null;

    private static bool Given(ParseResult call, Option<string> option) => call.GetValue(option) is not null;

    private static Option<string>? First(ParseResult call, params Option<string>[] options) => options.FirstOrDefault(o => Given(call, o));

    private static Option<string>? FirstMissing(ParseResult call, params Option<string>[] options) => options.FirstOrDefault(o => !Given(call, o));

    private static Option<string> Pair(string name, string description, string helpName) => new(name) { Description = description, HelpName = helpName };

    private static string Default(string what, double value) => CommandTexts.Say("screwsOptions.default", what, value);
}
