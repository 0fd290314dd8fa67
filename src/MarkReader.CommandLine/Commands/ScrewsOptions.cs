using System.CommandLine;
using System.Globalization;
using MarkReader.Application.Aiming;
using MarkReader.Application.Screws;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options of screws and their reading: the slope and the leg. Those of the frame: <see cref="FrameOptions"/>.</summary>
internal sealed class ScrewsOptions
{
    private const string Combination = "give --slope, or --near and --far with --near-path and --far-path";

    private readonly Option<string> _slope = Pair("--slope", "Slope along u and v, mrad, as aim prints it", "U,V");
    private readonly Option<string> _slopeUncertainty = CommonOptions.Number(
        "--slope-uncertainty", Default("Standard uncertainty of each component, mrad", SlopeInput.Stated.DefaultUncertainty), "MRAD");
    private readonly Option<string> _near = Pair("--near", "Instead of --slope: the near mark, mm on the card", "U,V");
    private readonly Option<string> _far = Pair("--far", "The far mark, mm on the same card", "U,V");
    private readonly Option<string> _markUncertainty = CommonOptions.Number(
        "--mark-uncertainty", Default("Standard uncertainty of each of the marks' components, mm", SlopeInput.FromMarks.DefaultUncertainty));
    private readonly Option<string> _nearPath = CommonOptions.Number("--near-path", "Path length from the source mirror's reflecting point to the target at the near station, mm");
    private readonly Option<string> _farPath = CommonOptions.Number("--far-path", "The same at the far station, mm");
    private readonly Option<string> _pathUncertainty = CommonOptions.Number(
        "--path-uncertainty", Default("Standard uncertainty of each path length, mm", LegInput.DefaultPathUncertainty));
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--incidence", "Angle between the beam and the target's normal, in the plane of u: positive when the +u side lies farther along the beam (default 0)", "DEGREES");
    private readonly Option<string> _tolerance = CommonOptions.Number(
        "--tolerance", Default("Largest spread of the marks over the travel, mm", ScrewsRequest.DefaultTolerance));

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
            return First(call, _near, _far, _markUncertainty) is { } other ? new(CommandLineFailures.OptionsConflict, $"--slope is given together with {other.Name}", Combination) : null;
        if (Given(call, _slopeUncertainty))
            return new(CommandLineFailures.OptionsConflict, "--slope-uncertainty is given without --slope", Combination);
        if (First(call, _near, _far) is null)
            return new(CommandLineFailures.OptionMissing, "--slope is missing", Combination);
        return FirstMissing(call, _near, _far, _nearPath, _farPath) is { } missing ? new(CommandLineFailures.OptionMissing, $"{missing.Name} is missing", Combination) : null;
    }

    private Failure? MissingPath(ParseResult call) =>
        First(call, _nearPath, _farPath, _pathUncertainty, _incidence, _tolerance) is { } given && FirstMissing(call, _nearPath, _farPath) is { } missing
            ? new(CommandLineFailures.OptionMissing, $"{given.Name} is given without {missing.Name}", "give --near-path and --far-path, or none of the leg's options")
            : null;

    private static bool Given(ParseResult call, Option<string> option) => call.GetValue(option) is not null;

    private static Option<string>? First(ParseResult call, params Option<string>[] options) => options.FirstOrDefault(o => Given(call, o));

    private static Option<string>? FirstMissing(ParseResult call, params Option<string>[] options) => options.FirstOrDefault(o => !Given(call, o));

    private static Option<string> Pair(string name, string description, string helpName) => new(name) { Description = description, HelpName = helpName };

    private static string Default(string what, double value) => string.Create(CultureInfo.InvariantCulture, $"{what} (default {value})");
}
