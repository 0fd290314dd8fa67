using MarkReader.Application.Aiming;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;

namespace MarkReader.Service.Uploads;

/// <summary>A photo for an aim: bytes that were sent with it, or the id of a photo that is kept.</summary>
/// <param name="Field">The field by which it came, without the ending Id.</param>
/// <param name="File">The bytes, or null.</param>
/// <param name="Id">The id, or null.</param>
internal sealed record PhotoSource(string Field, IFormFile? File, string? Id);

/// <summary>What a form asks to have worked out.</summary>
/// <param name="Near">The photo with the near mark, or with both.</param>
/// <param name="Far">The photo with the far mark; null when one photo shows both.</param>
/// <param name="First">Which mark is the near one, when one photo shows both; else null.</param>
/// <param name="Leg">The leg's inputs in mm and degrees, checked.</param>
/// <param name="Card">What was measured of the print and the tape, checked; null: nothing.</param>
/// <param name="NearAt">Where the near mark is in its photo, px; null: where it is found.</param>
/// <param name="FarAt">The same of the far mark.</param>
internal sealed record AimOrder(PhotoSource Near, PhotoSource? Far, FirstMark? First, LegInput Leg, CardInput? Card, PixelPoint? NearAt, PixelPoint? FarAt);
