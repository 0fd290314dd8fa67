using MarkReader.Quantities;

namespace MarkReader.Application.Apertures;

/// <summary>Refusals of what is given about an aperture.</summary>
public static class ApertureInputFailures
{
    public static readonly FailureCode MarksUnreadable = new("ENERGY_MARKS_UNREADABLE", FailureKind.BadInput);
}
