using System.CommandLine;
using System.Globalization;
using MarkReader.Application.Aiming;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>What an aim is asked for: the photos' bytes and the leg's numbers.</summary>
internal sealed record AimRequest(AimPhotos Photos, LegInput Leg);

/// <summary>The options of aim and their reading.</summary>
internal sealed class AimOptions
{
    private const string Combination = "give --near and --far, or --photo with --first left, right, upper or lower";

    private readonly Option<string> _near = new("--near") { Description = "Photo of the near mark, on the card", HelpName = "PHOTO" };
    private readonly Option<string> _far = new("--far") { Description = "Photo of the far mark; it may also show the near mark (same tape)", HelpName = "PHOTO" };
    private readonly Option<string> _photo = new("--photo") { Description = "One photo with both marks, instead of --near and --far", HelpName = "PHOTO" };
    private readonly Option<string> _first = new("--first") { Description = "With --photo: which mark is the near one, as seen in the photo (left, right, upper, lower)", HelpName = "SIDE" };
    private readonly Option<string> _nearPath = CommonOptions.Number("--near-path", "Path length from the source mirror's reflecting point to the target at the near station, mm");
    private readonly Option<string> _farPath = CommonOptions.Number("--far-path", "The same at the far station, mm");
    private readonly Option<string> _pathUncertainty = CommonOptions.Number(
        "--path-uncertainty", string.Create(CultureInfo.InvariantCulture, $"Standard uncertainty of each path length, mm (default {LegInput.DefaultPathUncertainty})"));
    private readonly Option<string> _incidence = CommonOptions.Number(
        "--incidence", "Angle between the beam and the target's normal, in the plane of u: positive when the +u side lies farther along the beam (default 0)", "DEGREES");
    private readonly Option<string> _pivot = CommonOptions.Number(
        "--pivot-offset", "Distance along the path between the mirror's reflecting point and the point about which the beam swings, mm (default 0)");
    private readonly Option<string> _pivotUncertainty = CommonOptions.Number("--pivot-uncertainty", "Its standard uncertainty, mm (default 0)");

    public AimOptions()
    {
        _nearPath.Required = true;
        _farPath.Required = true;
    }

    public IReadOnlyList<Option> All => [_near, _far, _photo, _first, _nearPath, _farPath, _pathUncertainty, _incidence, _pivot, _pivotUncertainty];

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
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (!CheckedLeg.From(leg).TryGet(out _, out Failure? failure))
            return failure;
        return Photos(call).TryGet(out AimPhotos? photos, out failure) ? new AimRequest(photos, leg) : failure;
    }

    private Outcome<AimPhotos> Photos(ParseResult call)
    {
        (string? near, string? far, string? photo, string? first) = (call.GetValue(_near), call.GetValue(_far), call.GetValue(_photo), call.GetValue(_first));
        if (photo is not null && (near ?? far) is not null)
            return new Failure(CommandLineFailures.OptionsConflict, "--photo is given together with --near or --far", Combination);
        if (photo is not null)
            return Both(photo, first);
        if (near is null || far is null)
            return new Failure(CommandLineFailures.OptionMissing, near is null ? "--near is missing" : "--far is missing", Combination);
        if (first is not null)
            return new Failure(CommandLineFailures.OptionsConflict, "--first is given without --photo", Combination);
        if (!PhotoFile.Read(near).TryGet(out PhotoFile? nearFile, out Failure? failure))
            return failure;
        return PhotoFile.Read(far).TryGet(out PhotoFile? farFile, out failure)
            ? new AimPhotos.NearAndFar(nearFile.Bytes, farFile.Bytes)
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
