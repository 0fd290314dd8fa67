using System.Text.Json;

namespace MarkReader.Application.Interim;

/// <summary>An interim check as JSON.</summary>
/// <param name="Before">The version that kept the set.</param>
/// <param name="Now">This version.</param>
/// <param name="Flagged">How many photos are flagged.</param>
/// <param name="Largest">Largest distance between a mark before and now, mm.</param>
public sealed record InterimReport(string Before, string Now, int Flagged, double Largest, IReadOnlyList<InterimLine> Photos)
{
    public static InterimReport From(InterimCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new(check.Before.Program, check.Now.Program, check.Flagged, check.Largest, [.. check.Photos.Select(p => new InterimLine(p.Name, JsonNamingPolicy.CamelCase.ConvertName(p.Verdict.ToString()), p.Largest, p.OfRegion))]);
    }
}

/// <summary>A photo of an interim check.</summary>
/// <param name="Verdict">same, within, beyond, otherMarks, photoChanged, gone, notKept.</param>
/// <param name="Largest">Largest distance of its marks, mm.</param>
/// <param name="OfRegion">The same over the distance to the border of the stated 95 % region.</param>
public sealed record InterimLine(string Name, string Verdict, double Largest, double OfRegion);
