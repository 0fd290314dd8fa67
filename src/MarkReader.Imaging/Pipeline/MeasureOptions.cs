using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Pipeline;

/// <summary>How a photo is measured.</summary>
/// <param name="DebugDirectory">A folder that every stage writes its picture to; null for none.</param>
public sealed record MeasureOptions(string? DebugDirectory = null)
{
    /// <summary>What the card's printed rulers really measure; null when nobody measured them: the print is taken as exact.</summary>
    public RulerReadings? Rulers { get; init; }

    /// <summary>Height of the tape's surface above the card's plane; by default the tape lies on the card.</summary>
    public TapeHeight Tape { get; init; } = TapeHeight.OnCard;

    /// <summary>The profile of the camera, named by the user; a photo that it does not fit is refused.</summary>
    public CameraProfile? Camera { get; init; }

    /// <summary>Profiles of which the one is used whose camera and lens the photo's EXIF names, if it fits.</summary>
    public IReadOnlyList<CameraProfile> KnownCameras { get; init; } = [];

    /// <summary>Places in the photo (px as displayed) at which the user says there is a mark. When any is given, only they are measured.</summary>
    public IReadOnlyList<PixelPoint> Taps { get; init; } = [];
}

/// <summary>The lengths of the card's two printed rulers, end to end, as measured by the user, with the standard uncertainty of each reading.</summary>
public sealed record RulerReadings(Length AlongU, Length AlongV, Length StandardUncertainty);

/// <summary>Height of the tape's surface above the card's plane (negative below it), with its standard uncertainty.</summary>
public sealed record TapeHeight(Length Height, Length StandardUncertainty)
{
    public static TapeHeight OnCard { get; } = new(Length.Zero, Length.Zero);
}
