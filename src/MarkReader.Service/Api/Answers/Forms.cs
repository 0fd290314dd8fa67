using MarkReader.Application.Aiming;

namespace MarkReader.Service.Api.Answers;

/// <summary>The form that sends one photo.</summary>
/// <param name="Photo">A JPEG, PNG or WebP file with the whole card in view, at most 40 MB.</param>
internal sealed record PhotoUpload(IFormFile Photo);

/// <summary>The form that asks for an aim: near and far photo, or photo and first; each photo as a file or as the id of one that is kept.</summary>
/// <param name="Near">The near photo.</param>
/// <param name="NearId">Or its id.</param>
/// <param name="Far">The far photo; it may also show the near mark.</param>
/// <param name="FarId">Or its id.</param>
/// <param name="Photo">One photo with both marks, in place of near and far.</param>
/// <param name="PhotoId">Or its id.</param>
/// <param name="First">With photo: which mark is the near one, as seen with the card's arrow up.</param>
/// <param name="NearPath">Path length of the near station, from the source mirror's reflecting point to the target.</param>
/// <param name="FarPath">Path length of the far station.</param>
/// <param name="Unit">Unit of the two path lengths: mm (unless said otherwise) or in.</param>
/// <param name="PathUncertainty">Standard uncertainty of each path length, mm; 1 unless said otherwise.</param>
/// <param name="IncidenceDegrees">Angle between beam and the target's normal, in the plane of u, positive when the right side lies farther along the beam; 0 unless said otherwise.</param>
/// <param name="PivotOffset">Distance from the reflecting point to the point about which the beam swings, mm; 0 unless said otherwise.</param>
/// <param name="PivotUncertainty">Its standard uncertainty, mm; 0 unless said otherwise.</param>
internal sealed record AimUpload(
    IFormFile? Near,
    string? NearId,
    IFormFile? Far,
    string? FarId,
    IFormFile? Photo,
    string? PhotoId,
    FirstMark? First,
    double NearPath,
    double FarPath,
    string? Unit,
    double? PathUncertainty,
    double? IncidenceDegrees,
    double? PivotOffset,
    double? PivotUncertainty);
