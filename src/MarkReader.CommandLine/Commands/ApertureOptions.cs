using System.CommandLine;
using System.Globalization;
using MarkReader.Application.Apertures;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options of aperture and their reading.</summary>
internal sealed class ApertureOptions
{
    private const string Combination = "give --diameter, --offset-u, --offset-v and the beam by --beam or --marks, or --marks alone for the beam's size";

    private readonly Option<string> _diameter = CommonOptions.Number("--diameter", "Diameter of the opening, mm");
    private readonly Option<string> _beam = CommonOptions.Number("--beam", "1/e2 diameter of the beam at the opening, mm");
    private readonly Option<string> _beamUncertainty = CommonOptions.Number("--beam-uncertainty", "Its standard uncertainty, mm (default a tenth of the diameter)");
    private readonly Option<string> _marks = new("--marks")
    {
        Description = string.Create(
            CultureInfo.InvariantCulture,
            $"Instead of --beam: marks of different pulse energies, as energy:diameter or energy:diameter:uncertainty, like 1:2.1,2:2.9,4:3.5; energies in any unit, diameters in mm (uncertainty {EnergyMarksText.DefaultUncertainty} unless given)"),
        HelpName = "LIST",
    };

    private readonly Option<string> _offsetU = CommonOptions.Number("--offset-u", "The beam's place from the opening's centre, to the right as one looks at the target, mm");
    private readonly Option<string> _offsetV = CommonOptions.Number("--offset-v", "The same upwards, mm");
    private readonly Option<string> _uncertainty = CommonOptions.Number(
        "--uncertainty", string.Create(CultureInfo.InvariantCulture, $"Standard uncertainty of each of the two, mm (default {OpeningInput.DefaultUncertainty})"));

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
            return new Failure(CommandLineFailures.OptionsConflict, "--marks is given together with --beam or --beam-uncertainty", Combination);
        if (marks is null && beam is null)
            return Missing(_beam);
        bool openingIsAsked = marks is null || (diameter ?? u ?? v ?? uncertainty) is not null;
        if (openingIsAsked && (diameter is null ? _diameter : u is null ? _offsetU : v is null ? _offsetV : null) is { } missing)
            return Missing(missing);
        return new ApertureRequest(
            openingIsAsked ? new(diameter!.Value, u!.Value, v!.Value, uncertainty ?? OpeningInput.DefaultUncertainty) : null,
            marks is not null ? new BeamInput.FromMarks(marks) : new BeamInput.Stated(beam!.Value, beamUncertainty));
    }

    private static Failure Missing(Option option) => new(CommandLineFailures.OptionMissing, $"{option.Name} is missing", Combination);
}
