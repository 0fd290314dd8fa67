using MarkReader.Application.Aiming;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>What an aim was worked out from.</summary>
/// <param name="NearPhoto">Id of the photo with the near mark.</param>
/// <param name="FarPhoto">Id of the photo with the far mark; the same one when it shows both.</param>
/// <param name="First">Which mark is the near one, when one photo shows both; else null.</param>
/// <param name="Leg">The leg's inputs, mm and degrees.</param>
public sealed record AimInputs(string NearPhoto, string FarPhoto, FirstMark? First, LegInput Leg)
{
    /// <summary>What was measured of the print and the tape; null: nothing.</summary>
    public CardInput? Card { get; init; }

    /// <summary>Where the user says the near mark is in its photo (px); null: where it was found.</summary>
    public PixelPoint? NearAt { get; init; }

    /// <summary>The same of the far mark.</summary>
    public PixelPoint? FarAt { get; init; }

    /// <summary>The camera profiles that the photos were measured with, each by its name and when it was made; null: none.</summary>
    public string? Cameras { get; init; }

    /// <summary>Whether one photo shows both marks.</summary>
    public bool IsOnePhoto => NearPhoto == FarPhoto;
}

/// <summary>An aim, or the refusal of one, that is to be kept.</summary>
/// <param name="Inputs">What it was worked out from.</param>
/// <param name="ProgramVersion">The version of the program that did it.</param>
/// <param name="Answer">The aim's report, or the refusal.</param>
/// <param name="Overlay">The overlay; null with a refusal.</param>
public sealed record NewAim(AimInputs Inputs, string ProgramVersion, KeptAnswer Answer, KeptOverlay? Overlay);

/// <summary>An overlay as SVG, its view box in pixels of the far photo.</summary>
/// <param name="Photo">Drawn for the whole photo.</param>
/// <param name="Crop">Drawn for the part about the card's free zone and the aim point.</param>
public sealed record KeptOverlay(string Photo, string Crop);

/// <summary>An aim that is kept.</summary>
/// <param name="Id">Counts up; never used twice.</param>
/// <param name="FoundAt">When it was worked out (UTC, to the millisecond).</param>
/// <param name="Aim">What was worked out.</param>
public sealed record KeptAim(long Id, DateTimeOffset FoundAt, NewAim Aim);

/// <summary>An aim with whether it is new: false when the same inputs were answered before by the same version.</summary>
public sealed record AimReceipt(KeptAim Kept, bool IsNew);
