using System.Globalization;
using MarkReader.Application.Aiming;
using MarkReader.Application.Measuring;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Service.Api.Answers;

/// <summary>An aim that was worked out, or the refusal of one.</summary>
/// <param name="Id">Its number.</param>
/// <param name="FoundAt">When it was first worked out.</param>
/// <param name="ProgramVersion">The version of the program that did it.</param>
/// <param name="Inputs">What it was worked out from.</param>
/// <param name="Report">Marks, aim point, slope and warnings; null when it was refused.</param>
/// <param name="Refusal">Why there is no report.</param>
/// <param name="Overlay">Address of the drawing over the far photo, SVG; null when it was refused.</param>
/// <param name="Page">Address of the page for people.</param>
internal sealed record AimAnswer(
    long Id,
    DateTimeOffset FoundAt,
    string ProgramVersion,
    AimInputsAnswer Inputs,
    AimReport? Report,
    RefusalAnswer? Refusal,
    string? Overlay,
    string Page)
{
    public static AimAnswer From(KeptAim kept) => new(
        kept.Id,
        kept.FoundAt,
        kept.Aim.ProgramVersion,
        AimInputsAnswer.From(kept.Aim.Inputs),
        KeptReports.Read<AimReport>(kept.Aim.Answer),
        RefusalAnswer.From(kept.Aim.Answer),
        kept.Aim.Overlay is null ? null : Address(kept.Id) + "/overlay.svg",
        string.Create(CultureInfo.InvariantCulture, $"/results/{kept.Id}"));

    public static string Address(long id) => string.Create(CultureInfo.InvariantCulture, $"/api/aims/{id}");
}

/// <summary>What an aim was worked out from; lengths in mm.</summary>
/// <param name="NearPhoto">Id of the photo with the near mark.</param>
/// <param name="FarPhoto">Id of the photo with the far mark; the same one when it shows both.</param>
/// <param name="First">Which mark is the near one, when one photo shows both.</param>
/// <param name="Card">What was measured of the print and the tape, mm; null: nothing.</param>
/// <param name="NearAt">Where the user named the near mark in its photo, px; null: it was found.</param>
/// <param name="FarAt">The same of the far mark.</param>
internal sealed record AimInputsAnswer(
    string NearPhoto,
    string FarPhoto,
    FirstMark? First,
    double NearPath,
    double FarPath,
    double PathUncertainty,
    double IncidenceDegrees,
    double PivotOffset,
    double PivotUncertainty,
    CardInput? Card,
    PlaceReport? NearAt,
    PlaceReport? FarAt)
{
    public static AimInputsAnswer From(AimInputs inputs) => new(
        inputs.NearPhoto,
        inputs.FarPhoto,
        inputs.First,
        inputs.Leg.NearPath,
        inputs.Leg.FarPath,
        inputs.Leg.PathUncertainty,
        inputs.Leg.IncidenceDegrees,
        inputs.Leg.PivotOffset,
        inputs.Leg.PivotUncertainty,
        inputs.Card,
        Place(inputs.NearAt),
        Place(inputs.FarAt));

    private static PlaceReport? Place(PixelPoint? place) => place is { } p ? new(p.X, p.Y) : null;
}

/// <summary>A page of aims, newest first.</summary>
/// <param name="Aims">The aims.</param>
/// <param name="Next">Address of the next page, or null.</param>
internal sealed record AimList(IReadOnlyList<AimAnswer> Aims, string? Next);
