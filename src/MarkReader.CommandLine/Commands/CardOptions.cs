using System.CommandLine;
using MarkReader.Application.Measuring;
using MarkReader.Cameras.Profiles;
using MarkReader.CommandLine.Input;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>What the user measured of the printed card and the tape.</summary>
internal sealed class CardOptions
{
    private readonly Option<string> _rulerU = CommonOptions.Number("--ruler-u", CommandTexts.Get("cardOptions.measuredLengthCardLowerPrinted"));
    private readonly Option<string> _rulerV = CommonOptions.Number("--ruler-v", CommandTexts.Get("cardOptions.sameUprightRuler"));
    private readonly Option<string> _rulerUncertainty = CommonOptions.Number(
        "--ruler-uncertainty", CommandTexts.Say("cardOptions.standardUncertaintyEachRulerLength", CardInput.DefaultRulerUncertainty));
    private readonly Option<string> _tapeHeight = CommonOptions.Number("--tape-height", CommandTexts.Get("cardOptions.heightTapeSurfaceAboveCard"));
    private readonly Option<string> _tapeHeightUncertainty = CommonOptions.Number("--tape-height-uncertainty", CommandTexts.Get("cardOptions.itsStandardUncertaintyMmDefault"));

    private readonly Option<string> _camera = CameraOption.Create();

    public IReadOnlyList<Option> All => [_rulerU, _rulerV, _rulerUncertainty, _tapeHeight, _tapeHeightUncertainty, _camera];

    /// <summary>How to measure, with these readings.</summary>
    public Outcome<MeasureOptions> Read(ParseResult call, MeasureOptions options)
    {
        Numbers numbers = new(call);
        CardInput input = new(
            numbers.ReadOptional(_rulerU), numbers.ReadOptional(_rulerV), numbers.ReadOptional(_rulerUncertainty),
            numbers.ReadOptional(_tapeHeight), numbers.ReadOptional(_tapeHeightUncertainty));
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (call.GetValue(_camera) is not { } named)
            return input.ApplyTo(options);
        return CameraOption.Read(named).TryGet(out CameraProfile? profile, out Failure? failure) ? input.ApplyTo(options with { Camera = profile }) : failure;
    }
}
