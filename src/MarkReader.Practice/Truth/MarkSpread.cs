using MarkReader.Quantities;

namespace MarkReader.Practice.Truth;

/// <summary>How far marks lie from each other.</summary>
/// <param name="Greatest">The greatest distance between any two of the marks: for a leg with a straight rail, slope times travel.</param>
/// <param name="FromMiddle">The greatest distance of a mark from <paramref name="Middle"/>.</param>
/// <param name="Middle">The mid-range: half-way between the least and the greatest u, and likewise v.</param>
public sealed record MarkSpread(Length Greatest, Length FromMiddle, CardPoint Middle)
{
    /// <exception cref="ArgumentException">There are no marks.</exception>
    public static MarkSpread Of(IReadOnlyList<CardPoint> marks)
    {
        if (marks.Count == 0)
            throw new ArgumentException("A spread needs marks.", nameof(marks));
        CardPoint middle = new((marks.Min(m => m.U) + marks.Max(m => m.U)) / 2, (marks.Min(m => m.V) + marks.Max(m => m.V)) / 2);
        return new(
            Length.FromMillimetres(marks.Max(a => marks.Max(a.DistanceTo))), Length.FromMillimetres(marks.Max(middle.DistanceTo)), middle);
    }
}

/// <summary>The slope between the beam and the rail as its tangent in units of 1/1000 (mrad): the mark's walk across the beam per metre of path, in mm.</summary>
/// <param name="U">To the right, as one looks along the beam.</param>
/// <param name="V">Upwards.</param>
public sealed record BeamSlope(double U, double V)
{
    /// <summary>Size of the slope, mrad.</summary>
    public double Magnitude => Math.Sqrt((U * U) + (V * V));
}

/// <summary>How the beam passes a place.</summary>
/// <param name="Offset">Place of the beam's middle from the place's middle.</param>
/// <param name="BeamRadius">w there.</param>
/// <param name="Radius">Radius of the hole, mirror or tape.</param>
public sealed record BeamPassage(CardVector Offset, Length BeamRadius, Length Radius);
