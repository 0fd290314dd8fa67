using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>The same photos measured by two versions of the program.</summary>
/// <param name="Before">What was kept.</param>
/// <param name="Now">What this version measures.</param>
/// <param name="Photos">Every photo of either.</param>
public sealed record InterimCheck(InterimRecord Before, InterimRecord Now, IReadOnlyList<InterimComparison> Photos)
{
    /// <summary>Marks of one photo that lie farther apart than this are two, mm.</summary>
    public const double SameMark = 0.5;

    /// <summary>Photos that are flagged.</summary>
    public int Flagged => Photos.Count(p => p.IsFlagged);

    /// <summary>Photos that cannot be compared: gone, another file, or not kept.</summary>
    public int NotCompared => Photos.Count(p => p.Verdict is InterimVerdict.PhotoChanged or InterimVerdict.Gone or InterimVerdict.NotKept);

    /// <summary>The largest distance between a mark before and now, mm; 0 without marks.</summary>
    public double Largest => Photos.Max(p => p.Largest);

    /// <remarks>
    /// The photo and its noise are the same, so that whatever differs comes from the program. Beyond the stated uncertainty: outside the region that was stated to hold the truth with 95 %.
    /// </remarks>
    public static InterimCheck Of(InterimRecord before, InterimRecord now)
    {
        Dictionary<string, InterimPhoto> earlier = before.Photos.ToDictionary(p => p.Name), later = now.Photos.ToDictionary(p => p.Name);
        return new(before, now, [.. earlier.Keys.Union(later.Keys).Order(StringComparer.Ordinal).Select(name => Compare(name, earlier.GetValueOrDefault(name), later.GetValueOrDefault(name)))]);
    }

    private static InterimComparison Compare(string name, InterimPhoto? before, InterimPhoto? now)
    {
        InterimComparison none = new(name, before is null ? InterimVerdict.NotKept : InterimVerdict.Gone, before, now, []);
        if (before is null || now is null)
            return none;
        if (before.Digest != now.Digest)
            return none with { Verdict = InterimVerdict.PhotoChanged };
        if (before.Refusal != now.Refusal || before.Marks.Count != now.Marks.Count)
            return none with { Verdict = InterimVerdict.OtherMarks };
        List<MeasuredPoint> open = [.. now.Marks];
        List<InterimShift> shifts = [];
        foreach (MeasuredPoint mark in before.Marks)
        {
            MeasuredPoint nearest = open.MinBy(m => m.Point.DistanceTo(mark.Point))!;
            InterimShift shift = new(mark, nearest.Point);
            if (shift.Distance > SameMark)
                return none with { Verdict = InterimVerdict.OtherMarks };
            open.Remove(nearest);
            shifts.Add(shift);
        }

        InterimVerdict verdict = shifts.Any(s => s.IsBeyond) ? InterimVerdict.Beyond : shifts.Any(s => s.Distance > 0) ? InterimVerdict.Within : InterimVerdict.Same;
        return none with { Verdict = verdict, Marks = shifts };
    }
}

/// <summary>One photo before and now.</summary>
/// <param name="Before">Null when it was not kept.</param>
/// <param name="Now">Null when it is gone.</param>
/// <param name="Marks">Each mark before with the same one now; none when they cannot be paired.</param>
public sealed record InterimComparison(string Name, InterimVerdict Verdict, InterimPhoto? Before, InterimPhoto? Now, IReadOnlyList<InterimShift> Marks)
{
    /// <summary>Whether it is not measured as it was.</summary>
    public bool IsFlagged => Verdict is not (InterimVerdict.Same or InterimVerdict.Within);

    /// <summary>Largest distance of its marks, mm.</summary>
    public double Largest => Marks.Select(m => m.Distance).DefaultIfEmpty().Max();

    /// <summary>The same over the distance to the border of the stated 95 % region, the largest of its marks.</summary>
    public double OfRegion => Marks.Select(m => m.OfRegion).DefaultIfEmpty().Max();
}

/// <summary>How a photo came out.</summary>
public enum InterimVerdict
{
    /// <summary>To the last digit.</summary>
    Same,

    /// <summary>Otherwise, within the stated uncertainty.</summary>
    Within,

    /// <summary>A mark moved out of the region that was stated for it.</summary>
    Beyond,

    /// <summary>Other marks are found, or the photo is refused where it was not.</summary>
    OtherMarks,

    /// <summary>The file is not the one that was measured.</summary>
    PhotoChanged,

    /// <summary>The photo is no longer there.</summary>
    Gone,

    /// <summary>The photo was not there when the set was kept.</summary>
    NotKept,
}
