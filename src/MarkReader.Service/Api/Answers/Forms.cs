using MarkReader.Application.Aiming;

namespace MarkReader.Service.Api.Answers;

/// <summary>The form that sends one photo. It describes the interface; the form itself is read by <see cref="Uploads.UploadForm"/>.</summary>
internal sealed class PhotoUpload
{
    /// <summary>A JPEG, PNG or WebP file with the whole card in view, at most 40 MB.</summary>
    public required IFormFile Photo { get; init; }
}

/// <summary>The form that asks for an aim: near and far photo, or photo and first; each photo as a file or as the id of one that is kept.</summary>
internal sealed class AimUpload
{
    /// <summary>The near photo.</summary>
    public IFormFile? Near { get; init; }

    /// <summary>The near photo's id, when it is kept already.</summary>
    public string? NearId { get; init; }

    /// <summary>The far photo; it may also show the near mark.</summary>
    public IFormFile? Far { get; init; }

    /// <summary>The far photo's id, when it is kept already.</summary>
    public string? FarId { get; init; }

    /// <summary>One photo with both marks, in place of near and far.</summary>
    public IFormFile? Photo { get; init; }

    /// <summary>That photo's id, when it is kept already.</summary>
    public string? PhotoId { get; init; }

    /// <summary>With one photo: which mark is the near one, as seen with the card's arrow up.</summary>
    public FirstMark? First { get; init; }

    /// <summary>Path length of the near station, from the source mirror's reflecting point to the target; comma or point before the decimals.</summary>
    public required double NearPath { get; init; }

    /// <summary>Path length of the far station.</summary>
    public required double FarPath { get; init; }

    /// <summary>Unit of the two path lengths: mm (unless said otherwise) or in.</summary>
    public string? Unit { get; init; }

    /// <summary>Standard uncertainty of each path length, mm; 1 unless said otherwise.</summary>
    public double? PathUncertainty { get; init; }

    /// <summary>Angle between the beam and the target's normal, in the plane of u, positive when the right side lies farther along the beam; 0 unless said otherwise.</summary>
    public double? IncidenceDegrees { get; init; }

    /// <summary>Distance from the reflecting point to the point about which the beam swings, mm; 0 unless said otherwise.</summary>
    public double? PivotOffset { get; init; }

    /// <summary>Standard uncertainty of the pivot offset, mm; 0 unless said otherwise.</summary>
    public double? PivotUncertainty { get; init; }
}
