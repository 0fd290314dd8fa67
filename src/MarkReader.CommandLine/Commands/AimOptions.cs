using System.CommandLine;
using MarkReader.Application.Aiming;
using MarkReader.CommandLine.Input;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>What an aim is asked for: the photos' bytes, the leg's numbers, and how to measure.</summary>
internal sealed record AimRequest(AimPhotos Photos, LegInput Leg, MeasureOptions How);

/// <summary>The options of aim and their reading.</summary>
internal sealed class AimOptions
{
    private static string Combination => CommandTexts.Get("aimOptions.giveNearAndFarOr");

    private readonly Option<string> _near = new("--near") { Description = CommandTexts.Get("aimOptions.photoNearMarkOnCard"), HelpName = "PHOTO" };
    private readonly Option<string> _far = new("--far") { Description = CommandTexts.Get("aimOptions.photoFarMarkMayAlso"), HelpName = "PHOTO" };
    private readonly Option<string> _photo = new("--photo") { Description = CommandTexts.Get("aimOptions.onePhotoWithBothMarks"), HelpName = "PHOTO" };
    private readonly Option<string> _first = new("--first") { Description = CommandTexts.Get("aimOptions.withPhotoWhichMarkNear"), HelpName = "SIDE" };
    private readonly Option<string> _nearAt = CommonOptions.Place("--near-at", CommandTexts.Get("aimOptions.placeNearMarkInPhoto"));
    private readonly Option<string> _farAt = CommonOptions.Place("--far-at", CommandTexts.Get("aimOptions.sameFarMark"));
    private readonly Option<string> _nearPath = CommonOptions.Number("--near-path", CommandTexts.Get("common.pathLengthFromSourceMirror"));
    private readonly Option<string> _farPath = CommonOptions.Number("--far-path", CommandTexts.Get("common.sameAtFarStationMm"));
    private readonly Option<string> _pathUncertainty = CommonOptions.Number(
        "--path-uncertainty", CommandTexts.Say("aimOptions.standardUncertaintyEachPathLength", LegInput.DefaultPathUncertainty));
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--incidence", CommandTexts.Get("common.angleBetweenBeamAndTarget"), "DEGREES");
    private readonly Option<string> _pivot = CommonOptions.Number(
        "--pivot-offset", CommandTexts.Get("aimOptions.distanceAlongPathBetweenMirror"));
    private readonly Option<string> _pivotUncertainty = CommonOptions.Number("--pivot-uncertainty", CommandTexts.Get("aimOptions.itsStandardUncertaintyMmDefault"));

    private readonly CardOptions _card = new();

    public AimOptions()
    {
        _nearPath.Required = true;
        _farPath.Required = true;
    }

    public IReadOnlyList<Option> All =>
        [_near, _far, _photo, _first, _nearAt, _farAt, _nearPath, _farPath, _pathUncertainty, _incidence, _pivot, _pivotUncertainty, .. _card.All];

    /// <summary>The photo files that the call names.</summary>
    public IEnumerable<string?> PhotoNames(ParseResult call) => [call.GetValue(_near), call.GetValue(_far), call.GetValue(_photo)];

    /// <summary>Reads the numbers and checks the leg before any photo is opened.</summary>
    public Outcome<AimRequest> Read(ParseResult call)
    {
        Numbers numbers = new(call);
        LegInput leg = new(
            numbers.Read(_nearPath),
            numbers.Read(_farPath),
            numbers.Read(_pathUncertainty, LegInput.DefaultPathUncertainty),
            numbers.Read(_incidence, 0),
            numbers.Read(_pivot, 0),
            numbers.Read(_pivotUncertainty, 0));
        (PixelPoint? nearAt, PixelPoint? farAt) = (numbers.ReadPlace(_nearAt), numbers.ReadPlace(_farAt));
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (!CheckedLeg.From(leg).TryGet(out _, out Failure? failure))
            return failure;
        if (!_card.Read(call, new()).TryGet(out MeasureOptions? how, out failure))
            return failure;
        return Photos(call, nearAt, farAt).TryGet(out AimPhotos? photos, out failure) ? new AimRequest(photos, leg, how) : failure;
    }

    private Outcome<AimPhotos> Photos(ParseResult call, PixelPoint? nearAt, PixelPoint? farAt)
    {
        (string? near, string? far, string? photo, string? first) = (call.GetValue(_near), call.GetValue(_far), call.GetValue(_photo), call.GetValue(_first));
        if (photo is not null && (near ?? far) is not null)
            return new Failure(CommandLineFailures.OptionsConflict, CommandTexts.Get("aimOptions.photoGivenTogetherWithNear"), Combination);
        if (photo is not null)
            return nearAt is null && farAt is null ? Both(photo, first) : Named(photo, first, nearAt, farAt);
        if (near is null || far is null)
            return new Failure(CommandLineFailures.OptionMissing, near is null ? CommandTexts.Get("aimOptions.nearMissing") : CommandTexts.Get("aimOptions.farMissing"), Combination);
        if (first is not null)
            return new Failure(CommandLineFailures.OptionsConflict, CommandTexts.Get("aimOptions.firstGivenWithoutPhoto"), Combination);
        if (!PhotoFile.Read(near).TryGet(out PhotoFile? nearFile, out Failure? failure))
            return failure;
        return PhotoFile.Read(far).TryGet(out PhotoFile? farFile, out failure)
            ? new AimPhotos.NearAndFar(nearFile.Bytes, farFile.Bytes) { NearAt = nearAt, FarAt = farAt }
            : failure;
    }

    private static Outcome<AimPhotos> Named(string photo, string? first, PixelPoint? nearAt, PixelPoint? farAt)
    {
        if (nearAt is null || farAt is null)
            return new Failure(CommandLineFailures.OptionMissing, nearAt is null ? CommandTexts.Get("aimOptions.nearAtMissing") : CommandTexts.Get("aimOptions.farAtMissing"), CommandTexts.Get("aimOptions.withPhotoNamePlacesBoth"));
        if (first is not null)
            return new Failure(CommandLineFailures.OptionsConflict, CommandTexts.Get("aimOptions.firstGivenTogetherWithNear"), CommandTexts.Get("aimOptions.leaveFirstOutPlacesSay"));
        return PhotoFile.Read(photo).TryGet(out PhotoFile? file, out Failure? failure)
            ? new AimPhotos.BothNamed(file.Bytes, nearAt.Value, farAt.Value)
            : failure;
    }

    private static Outcome<AimPhotos> Both(string photo, string? first)
    {
        if (first is null)
            return new Failure(CommandLineFailures.OptionMissing, CommandTexts.Get("aimOptions.firstMissing"), CommandTexts.Get("aimOptions.sayWhichTwoMarksNear"));
        if (!Enum.GetNames<FirstMark>().Contains(first, StringComparer.OrdinalIgnoreCase))
            return new Failure(CommandLineFailures.ChoiceUnknown, CommandTexts.Word("aimOptions.firstNotKnown", first), CommandTexts.Get("aimOptions.useLeftRightUpperOr"));
        return PhotoFile.Read(photo).TryGet(out PhotoFile? file, out Failure? failure)
            ? new AimPhotos.Both(file.Bytes, Enum.Parse<FirstMark>(first, ignoreCase: true))
            : failure;
    }
}
