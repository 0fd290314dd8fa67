using System.Text.Json;

namespace MarkReader.Application.Interim;

/// <summary>An interim check as JSON.</summary>
/// <param name="Before">The version that kept the set.</param>
/// <param name="Now">The version that measured it again.</param>
/// <param name="Flagged">How many photos are flagged.</param>
/// <param name="Largest">Largest distance between a mark before and now, mm.</param>
public sealed record InterimReport(string Before, string Now, int Flagged, double Largest, IReadOnlyList<InterimLine> Photos)
{
    public static InterimReport From(InterimCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new(check.Before.Program, check.Now.Program, check.Flagged, check.Largest, [.. check.Photos.Select(InterimLine.From)]);
    }
}

/// <summary>A photo of an interim check.</summary>
/// <param name="Verdict">same, within, beyond, otherMarks, photoChanged, gone, notKept.</param>
/// <param name="Largest">Largest distance of its marks, mm.</param>
/// <param name="OfRegion">The same over the distance to the border of the stated 95 % region.</param>
/// <param name="Marks">Its marks, as they were kept; none when they cannot be paired with those of now.</param>
public sealed record InterimLine(string Name, string Verdict, double Largest, double OfRegion, IReadOnlyList<InterimMarkLine> Marks)
{
    internal static InterimLine From(InterimComparison p) => new(
        p.Name,
        JsonNamingPolicy.CamelCase.ConvertName(p.Verdict.ToString()),
        p.Largest,
        p.OfRegion,
        [.. p.Marks.Select(m => new InterimMarkLine(m.Before.Point.U, m.Before.Point.V, m.Moved.U, m.Moved.V, m.Distance, m.Allowed, m.IsBeyond))]);
}

/// <summary>A mark of an interim check, mm.</summary>
/// <param name="U">Where it was.</param>
/// <param name="V">Where it was.</param>
/// <param name="MovedU">From there to where it is now.</param>
/// <param name="MovedV">From there to where it is now.</param>
/// <param name="Moved">How far that is.</param>
/// <param name="Allowed">From there to the border of the region that was stated to hold it with 95 %, in the same direction.</param>
/// <param name="Beyond">Whether it moved farther than that.</param>
public sealed record InterimMarkLine(double U, double V, double MovedU, double MovedV, double Moved, double Allowed, bool Beyond);
