using MarkReader.Application.Aiming;
using MarkReader.Application.Studies;

namespace MarkReader.Service.Api.Answers;

/// <summary>The form that sends one photo. It describes the interface; the form itself is read by <see cref="Uploads.UploadForm"/>.</summary>
internal sealed class PhotoUpload
{
    /// <summary>A JPEG, PNG or WebP file with the whole card in view, at most 40 MB.</summary>
    public required IFormFile Photo { get; init; }
}

/// <summary>The form that sends one photo of the calibration board.</summary>
internal sealed class BoardUpload
{
    /// <summary>A JPEG, PNG or WebP file as the camera stored it, at most 40 MB.</summary>
    public required IFormFile Photo { get; init; }
}

/// <summary>The form that sends one photo of a study.</summary>
internal sealed class StudyUpload
{
    /// <summary>A JPEG, PNG or WebP file with the whole card in view, at most 40 MB.</summary>
    public required IFormFile Photo { get; init; }

    /// <summary>Who took it, or with which phone, as the plan names them; left out for pulses.</summary>
    public string? Person { get; init; }
}

/// <summary>A study's plan.</summary>
internal sealed class StudyToBegin
{
    /// <summary>marks or pulses.</summary>
    public required StudyKind Kind { get; init; }

    /// <summary>Its name, 1 to 80 signs.</summary>
    public required string Name { get; init; }

    /// <summary>Of marks: largest distance of a mark from where it should be, mm; 0.5 unless said otherwise.</summary>
    public double? Tolerance { get; init; }

    /// <summary>Of marks: names of the people or phones, two to twelve.</summary>
    public IReadOnlyList<string>? People { get; init; }

    /// <summary>Of marks: photos that each of them takes, two to twenty.</summary>
    public int? PhotosEach { get; init; }

    /// <summary>Of pulses: beam path from the source mirror to the station, mm; without it no angles are worked out.</summary>
    public double? Path { get; init; }

    /// <summary>Of pulses: how many are to be fired, 3 to 100.</summary>
    public int? Pulses { get; init; }

    /// <summary>Length of the printed ruler along u, mm; without it the print is taken as true to scale. So for all photos of the study, as the following.</summary>
    public double? RulerU { get; init; }

    /// <summary>Length of the printed ruler along v, mm.</summary>
    public double? RulerV { get; init; }

    /// <summary>Standard uncertainty of each, mm.</summary>
    public double? RulerUncertainty { get; init; }

    /// <summary>Height of the tape's surface above the card's, mm, negative below it.</summary>
    public double? TapeHeight { get; init; }

    /// <summary>Its standard uncertainty, mm.</summary>
    public double? TapeHeightUncertainty { get; init; }
}

/// <summary>A machine that takes a study's scatter.</summary>
internal sealed class MachineToEnter
{
    /// <summary>The machine's number.</summary>
    public required long Machine { get; init; }
}

/// <summary>The form for a check of a printed card; lengths in mm.</summary>
internal sealed class CardCheckUpload
{
    /// <summary>JPEG, PNG or WebP files as the camera stored them, three to 24, together at most 40 MB.</summary>
    public required IFormFileCollection Photos { get; init; }

    /// <summary>Number of the camera that took them.</summary>
    public required long Camera { get; init; }

    /// <summary>What the check is called, at most 80 signs; without it, nothing.</summary>
    public string? Name { get; init; }

    /// <summary>What the card's lower printed ruler really measures, end to end.</summary>
    public double? RulerU { get; init; }

    /// <summary>The same of the upright ruler.</summary>
    public double? RulerV { get; init; }

    /// <summary>Standard uncertainty of each; 0.1 unless said otherwise.</summary>
    public double? RulerUncertainty { get; init; }

    /// <summary>Largest error of a mark that the card may cause; 0.05 unless said otherwise.</summary>
    public double? Tolerance { get; init; }
}

/// <summary>The form that keeps a set of reference photos.</summary>
internal sealed class InterimUpload
{
    /// <summary>JPEG, PNG or WebP files with the whole card in view, one to 24, together at most 40 MB.</summary>
    public required IFormFileCollection Photos { get; init; }

    /// <summary>The set's name, 1 to 80 signs; the day unless said otherwise.</summary>
    public string? Name { get; init; }
}

/// <summary>What names a camera.</summary>
internal sealed class CameraToMake
{
    /// <summary>Its name, 1 to 80 signs, which no other camera has.</summary>
    public required string Name { get; init; }
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

    /// <summary>Place of the near mark in the near photo, "x,y" in px, when the program does not find it.</summary>
    public string? NearAt { get; init; }

    /// <summary>Place of the far mark in the far photo.</summary>
    public string? FarAt { get; init; }

    /// <summary>With one photo: place of the near mark, "x,y" in px; with photoFarAt, and first is not needed.</summary>
    public string? PhotoNearAt { get; init; }

    /// <summary>With one photo: place of the far mark.</summary>
    public string? PhotoFarAt { get; init; }

    /// <summary>Measured length of the card's lower printed ruler, end to end, mm; with rulerV. The print is taken as exact unless said otherwise.</summary>
    public double? RulerU { get; init; }

    /// <summary>Measured length of the card's upright printed ruler, mm.</summary>
    public double? RulerV { get; init; }

    /// <summary>Standard uncertainty of each ruler's length, mm; 0.1 unless said otherwise.</summary>
    public double? RulerUncertainty { get; init; }

    /// <summary>Height of the tape's surface above the card's, mm, negative below it; the tape lies on the card unless said otherwise.</summary>
    public double? TapeHeight { get; init; }

    /// <summary>Standard uncertainty of the tape's height, mm; a quarter of the height, at least 0.05, unless said otherwise.</summary>
    public double? TapeHeightUncertainty { get; init; }
}
