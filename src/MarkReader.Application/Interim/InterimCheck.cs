using MarkReader.Quantities;

namespace MarkReader.Application.Interim;

/// <summary>The same photos measured by two versions of the program.</summary>
/// <param name="Before">What was kept.</param>
/// <param name="Now">What this version measures.</param>
/// <param name="Photos">Every photo of either.</param>
public sealed record InterimCheck(InterimRecord Before, InterimRecord Now, IReadOnlyList<InterimComparison> Photos)
{
    /// <summary>Marks of one photo that lie farther apart than this are two, mm.</summary>
    private const double SameMark = 0.5;

    /// <summary>Photos that are flagged.</summary>
    public int Flagged => Photos.Count(p => p.Verdict is not (InterimVerdict.Same or InterimVerdict.Within));

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
        if (before is null || now is null)
            return new(name, before is null ? InterimVerdict.NotKept : InterimVerdict.Gone, 0, 0);
        if (before.Digest != now.Digest)
            return new(name, InterimVerdict.PhotoChanged, 0, 0);
        if (before.Refusal != now.Refusal || before.Marks.Count != now.Marks.Count)
            return new(name, InterimVerdict.OtherMarks, 0, 0);
        List<MeasuredPoint> open = [.. now.Marks];
        (double largest, double worst) = (0, 0);
        foreach (MeasuredPoint mark in before.Marks)
        {
            MeasuredPoint nearest = open.MinBy(m => m.Point.DistanceTo(mark.Point))!;
            double distance = nearest.Point.DistanceTo(mark.Point);
            if (distance > SameMark)
                return new(name, InterimVerdict.OtherMarks, 0, 0);
            open.Remove(nearest);
            (largest, worst) = (Math.Max(largest, distance), Math.Max(worst, mark.Covariance.MahalanobisSquared(nearest.Point - mark.Point)));
        }

        double ratio = worst / Covariance2.ChiSquare95;
        return new(name, largest == 0 ? InterimVerdict.Same : ratio <= 1 ? InterimVerdict.Within : InterimVerdict.Beyond, largest, Math.Sqrt(ratio));
    }
}

/// <summary>One photo before and now.</summary>
/// <param name="Largest">Largest distance of its marks, mm.</param>
/// <param name="OfRegion">The same over the distance to the border of the stated 95 % region, the largest of its marks.</param>
public sealed record InterimComparison(string Name, InterimVerdict Verdict, double Largest, double OfRegion);

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

    /// <summary>The photo is no longer in the folder.</summary>
    Gone,

    /// <summary>The photo was not there when the set was kept.</summary>
    NotKept,
}
