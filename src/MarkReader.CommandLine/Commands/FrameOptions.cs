using System.CommandLine;
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
    private static string Thread => CommandTexts.Get("frameOptions.givePitchInMmOr");

    private readonly Option<string> _pivot = new("--pivot") { Description = CommandTexts.Get("frameOptions.cornerFramePivotAsSeen"), HelpName = "CORNER" };
    private readonly Option<string[]> _screws = new("--screw") { Description = CommandTexts.Get("frameOptions.screwAndCornerLikeLowerright"), HelpName = "NAME=CORNER" };
    private readonly Option<string> _arm = CommonOptions.Number("--arm", CommandTexts.Get("frameOptions.distanceBetweenMiddlesNeighbouringContacts"));
    private readonly Option<string> _pitch = CommonOptions.Number("--pitch", CommandTexts.Get("frameOptions.whatScrewAdvancesInOne"));
    private readonly Option<string> _thread = new("--thread") { Description = CommandTexts.Get("frameOptions.insteadPitchThreadNameLike"), HelpName = "NAME" };
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--mirror-incidence", CommandTexts.Say("frameOptions.angleBetweenBeamAndNormal", FrameInput.DefaultIncidence), "DEGREES");
    private readonly Option<string[]> _responses = new("--response")
    {
        Description = CommandTexts.Get("frameOptions.whatKnownScrewFromEarlier"),
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
            return new Failure(CommandLineFailures.OptionsConflict, CommandTexts.Get("frameOptions.pitchGivenTogetherWithThread"), Thread);
        return (pitch ?? thread?.Pitch.Millimetres) is { } advance
            ? new FrameInput(pivot?.Corner, screws, arm, advance, incidence, known)
            : new Failure(CommandLineFailures.OptionMissing, CommandTexts.Get("frameOptions.pitchMissing"), Thread);
    }
}
