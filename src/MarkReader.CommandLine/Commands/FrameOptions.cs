using System.CommandLine;
using System.Globalization;
using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Alignment.Threads;
using MarkReader.Application.Screws;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options that describe a mirror's frame, and their reading.</summary>
internal sealed class FrameOptions
{
    private const string Thread = "give --pitch in mm, or --thread with the thread's name";

    private readonly Option<string> _pivot = new("--pivot") { Description = "Corner of the frame's pivot, as seen facing the knobs: lowerLeft, lowerRight, upperLeft, upperRight; none for three screws", HelpName = "CORNER" };
    private readonly Option<string[]> _screws = new("--screw") { Description = "A screw and its corner, like A=lowerRight; two with a pivot, three without", HelpName = "NAME=CORNER" };
    private readonly Option<string> _arm = CommonOptions.Number("--arm", "Distance between the middles of neighbouring contacts, mm");
    private readonly Option<string> _pitch = CommonOptions.Number("--pitch", "What a screw advances in one turn, mm");
    private readonly Option<string> _thread = new("--thread") { Description = "Instead of --pitch: the thread's name, like M4, M4x0.5, #8-32 or 1/4-20", HelpName = "NAME" };
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--mirror-incidence", string.Create(CultureInfo.InvariantCulture, $"Angle between the beam and the normal of the frame's mirror (default {FrameInput.DefaultIncidence})"), "DEGREES");
    private readonly Option<string[]> _responses = new("--response")
    {
        Description = "What is known of a screw from an earlier visit: mrad for one turn clockwise along u and v, and their standard uncertainty, like A=46.5,-0.8,1.2; may be given for each screw",
        HelpName = "NAME=U,V,UNCERTAINTY",
    };

    public FrameOptions() => (_screws.Required, _arm.Required) = (true, true);

    public IReadOnlyList<Option> All => [_pivot, _screws, _arm, _pitch, _thread, _incidence, _responses];

    public Outcome<FrameInput> Read(ParseResult call)
    {
        Numbers numbers = new(call);
        NamedCorner? pivot = numbers.ReadOptional(_pivot, FrameTexts.Corner);
        IReadOnlyList<ScrewCorner> screws = numbers.ReadAll(_screws, FrameTexts.Screw);
        (double arm, double? pitch, double incidence) = (numbers.Read(_arm), numbers.ReadOptional(_pitch), numbers.Read(_incidence, FrameInput.DefaultIncidence));
        ScrewThread? thread = numbers.ReadOptional(_thread, ScrewThreads.Parse);
        IReadOnlyList<KnownResponse> known = numbers.ReadAll(_responses, FrameTexts.Response);
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (pitch is not null && thread is not null)
            return new Failure(CommandLineFailures.OptionsConflict, "--pitch is given together with --thread", Thread);
        return (pitch ?? thread?.Pitch.Millimetres) is { } advance
            ? new FrameInput(pivot?.Corner, screws, arm, advance, incidence, known)
            : new Failure(CommandLineFailures.OptionMissing, "--pitch is missing", Thread);
    }
}
