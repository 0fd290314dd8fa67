using System.CommandLine;
using System.Globalization;
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
    private const string Combination = "give --near and --far, or --photo with --first left, right, upper or lower, or --photo with --near-at and --far-at";

    private readonly Option<string> _near = new("--near") { Description = "Photo of the near mark, on the card", HelpName = "PHOTO" };
    private readonly Option<string> _far = new("--far") { Description = "Photo of the far mark; it may also show the near mark (same tape)", HelpName = "PHOTO" };
    private readonly Option<string> _photo = new("--photo") { Description = "One photo with both marks, instead of --near and --far", HelpName = "PHOTO" };
    private readonly Option<string> _first = new("--first") { Description = "With --photo: which mark is the near one, as seen in the photo (left, right, upper, lower)", HelpName = "SIDE" };
    private readonly Option<string> _nearAt = CommonOptions.Place("--near-at", "Place of the near mark in its photo, in pixels, when the program does not find it; with --photo give --far-at too");
    private readonly Option<string> _farAt = CommonOptions.Place("--far-at", "The same of the far mark");
    private readonly Option<string> _nearPath = CommonOptions.Number("--near-path", "Path length from the source mirror's reflecting point to the target at the near station, mm");
    private readonly Option<string> _farPath = CommonOptions.Number("--far-path", "The same at the far station, mm");
    private readonly Option<string> _pathUncertainty = CommonOptions.Number(
        "--path-uncertainty", string.Create(CultureInfo.InvariantCulture, $"Standard uncertainty of each path length, mm (default {LegInput.DefaultPathUncertainty})"));
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--incidence", "Angle between the beam and the target's normal, in the plane of u: positive when the +u side lies farther along the beam (default 0)", "DEGREES");
    private readonly Option<string> _pivot = CommonOptions.Number(
        "--pivot-offset", "Distance along the path between the mirror's reflecting point and the point about which the beam swings, mm (default 0)");
    private readonly Option<string> _pivotUncertainty = CommonOptions.Number("--pivot-uncertainty", "Its standard uncertainty, mm (default 0)");

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
            return new Failure(CommandLineFailures.OptionsConflict, "--photo is given together with --near or --far", Combination);
        if (photo is not null)
            return nearAt is null && farAt is null ? Both(photo, first) : Named(photo, first, nearAt, farAt);
        if (near is null || far is null)
            return new Failure(CommandLineFailures.OptionMissing, near is null ? "--near is missing" : "--far is missing", Combination);
        if (first is not null)
            return new Failure(CommandLineFailures.OptionsConflict, "--first is given without --photo", Combination);
        if (!PhotoFile.Read(near).TryGet(out PhotoFile? nearFile, out Failure? failure))
            return failure;
        return PhotoFile.Read(far).TryGet(out PhotoFile? farFile, out failure)
            ? new AimPhotos.NearAndFar(nearFile.Bytes, farFile.Bytes) { NearAt = nearAt, FarAt = farAt }
            : failure;
    }

    private static Outcome<AimPhotos> Named(string photo, string? first, PixelPoint? nearAt, PixelPoint? farAt)
    {
        if (nearAt is null || farAt is null)
            return new Failure(CommandLineFailures.OptionMissing, nearAt is null ? "--near-at is missing" : "--far-at is missing", "with --photo name the places of both marks, or of none and give --first");
        if (first is not null)
            return new Failure(CommandLineFailures.OptionsConflict, "--first is given together with --near-at and --far-at", "leave --first out: the places say which mark is which");
        return PhotoFile.Read(photo).TryGet(out PhotoFile? file, out Failure? failure)
            ? new AimPhotos.BothNamed(file.Bytes, nearAt.Value, farAt.Value)
            : failure;
    }

    private static Outcome<AimPhotos> Both(string photo, string? first)
    {
        if (first is null)
            return new Failure(CommandLineFailures.OptionMissing, "--first is missing", "say which of the two marks is the near one: left, right, upper or lower");
        if (!Enum.GetNames<FirstMark>().Contains(first, StringComparer.OrdinalIgnoreCase))
            return new Failure(CommandLineFailures.ChoiceUnknown, $"--first: '{first}' is not known", "use left, right, upper or lower");
        return PhotoFile.Read(photo).TryGet(out PhotoFile? file, out Failure? failure)
            ? new AimPhotos.Both(file.Bytes, Enum.Parse<FirstMark>(first, ignoreCase: true))
            : failure;
    }
}
