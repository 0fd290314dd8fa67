using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Tests.Support;

/// <summary>Compares measured marks with true places: counts first, then errors.</summary>
internal static class Truth
{
    /// <summary>Each mark's error from its true place, mm; fails when a mark is missing or invented.</summary>
    public static IReadOnlyList<double> Errors(IReadOnlyList<CardPoint> truth, IReadOnlyList<Mark> marks)
    {
        Assert.Equal(truth.Count, marks.Count);
        List<CardPoint> left = [.. truth];
        List<double> errors = [];
        foreach (Mark mark in marks)
        {
            CardPoint nearest = left.MinBy(t => t.DistanceTo(mark.Centre.Point));
            left.Remove(nearest);
            errors.Add(nearest.DistanceTo(mark.Centre.Point));
        }

        return errors;
    }

    public static double Rms(IEnumerable<double> errors) => Math.Sqrt(errors.Average(e => e * e));
}
