using System.CommandLine;
using MarkReader.Application.Apertures;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options of aperture and their reading.</summary>
internal sealed class ApertureOptions
{
    private static string Combination => CommandTexts.Get("apertureOptions.giveDiameterOffsetUOffset");

    private readonly Option<string> _diameter = CommonOptions.Number("--diameter", CommandTexts.Get("apertureOptions.diameterOpeningMm"));
    private readonly Option<string> _beam = CommonOptions.Number("--beam", CommandTexts.Get("apertureOptions.eDiameterBeamAtOpening"));
    private readonly Option<string> _beamUncertainty = CommonOptions.Number("--beam-uncertainty", CommandTexts.Get("apertureOptions.itsStandardUncertaintyMmDefault"));
    private readonly Option<string> _marks = new("--marks")
    {
        Description = CommandTexts.Say("apertureOptions.insteadBeamMarksDifferentPulse", EnergyMarksText.DefaultUncertainty),
        HelpName = "LIST",
    };

    private readonly Option<string> _offsetU = CommonOptions.Number("--offset-u", CommandTexts.Get("apertureOptions.beamPlaceFromOpeningCentre"));
    private readonly Option<string> _offsetV = CommonOptions.Number("--offset-v", CommandTexts.Get("apertureOptions.sameUpwardsMm"));
    private readonly Option<string> _uncertainty = CommonOptions.Number(
        "--uncertainty", CommandTexts.Say("apertureOptions.standardUncertaintyEachTwoMm", OpeningInput.DefaultUncertainty));

    public IReadOnlyList<Option> All => [_diameter, _beam, _beamUncertainty, _marks, _offsetU, _offsetV, _uncertainty];

    public Outcome<ApertureRequest> Read(ParseResult call)
    {
        Numbers numbers = new(call);
        (double? diameter, double? u, double? v) = (numbers.ReadOptional(_diameter), numbers.ReadOptional(_offsetU), numbers.ReadOptional(_offsetV));
        (double? uncertainty, double? beam, double? beamUncertainty) = (numbers.ReadOptional(_uncertainty), numbers.ReadOptional(_beam), numbers.ReadOptional(_beamUncertainty));
        EnergyMarks? marks = numbers.ReadOptional(_marks, EnergyMarksText.Read);
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (marks is not null && (beam ?? beamUncertainty) is not null)
            return new Failure(CommandLineFailures.OptionsConflict, CommandTexts.Get("apertureOptions.marksGivenTogetherWithBeam"), Combination);
        if (marks is null && beam is null)
            return Missing(_beam);
        bool openingIsAsked = marks is null || (diameter ?? u ?? v ?? uncertainty) is not null;
        if (openingIsAsked && (diameter is null ? _diameter : u is null ? _offsetU : v is null ? _offsetV : null) is { } missing)
            return Missing(missing);
        return new ApertureRequest(
            openingIsAsked ? new(diameter!.Value, u!.Value, v!.Value, uncertainty ?? OpeningInput.DefaultUncertainty) : null,
            marks is not null ? new BeamInput.FromMarks(marks) : new BeamInput.Stated(beam!.Value, beamUncertainty));
    }

    private static Failure Missing(Option option) => new(CommandLineFailures.OptionMissing, CommandTexts.Word("apertureOptions.missing", option.Name), Combination);
}
