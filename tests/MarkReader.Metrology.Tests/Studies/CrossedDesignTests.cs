using CsCheck;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;
using MathNet.Numerics.Random;

namespace MarkReader.Metrology.Tests.Studies;

public sealed class CrossedDesignTests
{
    private static readonly KnownComponents s_some = new(4, 3, 2, 3, 0.1, 0.1, 0.1, 0.2);

    [Fact]
    public void A_study_with_a_reading_missing_is_refused_with_the_place_where_it_is_missing()
    {
        IReadOnlyList<Reading> readings = s_some.Draw(new MersenneTwister(1));
        Failure failure = Refusal([.. readings.Where(r => r != readings[^1])]);
        Assert.Equal(StudyFailures.Unbalanced, failure.Code);
        Assert.Contains("part '3' was measured once by operator '2'", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Doubled_single_and_unending_readings_are_refused()
    {
        IReadOnlyList<Reading> readings = s_some.Draw(new MersenneTwister(1));
        Assert.Equal(StudyFailures.Repeated, Refusal([.. readings, readings[0]]).Code);
        Assert.Equal(StudyFailures.TooSmall, Refusal([.. readings.Where(r => r.Repeat == "0")]).Code);
        Assert.Equal(StudyFailures.TooSmall, Refusal([.. readings.Where(r => r.Operator == "0")]).Code);
        Assert.Equal(StudyFailures.ReadingInvalid, Refusal([.. readings.Skip(1), readings[0] with { Value = double.NaN }]).Code);
        Assert.Equal(StudyFailures.TooSmall, Refusal([]).Code);
    }

    [Fact]
    public void Photos_must_show_all_parts()
    {
        Reading[] readings = [.. s_some.Draw(new MersenneTwister(1)).Select(r => r.Part == "2" && r.Repeat == "1" ? r with { Repeat = "other" } : r)];
        Assert.True(GaugeStudy.Run(readings).TryGet(out _, out _));
        Assert.False(GaugeStudy.Run(readings, new() { Photos = true }).TryGet(out _, out Failure? failure));
        Assert.Equal(StudyFailures.Unbalanced, failure.Code);
    }

    /// <summary>Sums of squares add up to the total; moving all readings and changing the unit change the components as they must; the order of the readings changes nothing.</summary>
    [Fact]
    public void Sums_add_up_and_components_do_not_depend_on_origin_unit_or_order()
    {
        (from seed in Gen.Int[0, 100000] from shift in Gen.Double[-500, 500] from unit in Gen.Double[0.05, 30] from photos in Gen.Bool select (seed, shift, unit, photos)).Sample(t =>
        {
            IReadOnlyList<Reading> readings = s_some.Draw(new MersenneTwister(t.seed));
            GaugeOptions options = new() { Photos = t.photos, PoolAbove = 1 };
            GaugeStudy one = GaugeStudy.Run(readings, options).ValueOrThrow();
            GaugeStudy other = GaugeStudy.Run([.. readings.Reverse().Select(r => r with { Value = t.unit * (r.Value + t.shift) })], options).ValueOrThrow();
            double mean = readings.Average(r => r.Value), total = readings.Sum(r => (r.Value - mean) * (r.Value - mean));
            Assert.Equal(total, one.Rows.Single(r => r.Source == AnovaSource.Total).SumOfSquares, 1e-9 * total);
            foreach (VarianceComponent c in one.Components.Values)
            {
                Assert.Equal(c.Variance, other[c.Part].Variance / (t.unit * t.unit), 1e-8);
                Assert.Equal(c.Interval.High, other[c.Part].Interval.High / (t.unit * t.unit), 1e-6 * (1 + c.Interval.High));
            }
        }, iter: 100);
    }

    [Fact]
    public void Readings_without_any_scatter_make_no_test_and_no_component()
    {
        Reading[] readings = [.. from i in Enumerable.Range(0, 3) from j in Enumerable.Range(0, 2) from k in Enumerable.Range(0, 2) select new Reading($"{i}", $"{j}", $"{k}", 2 * i)];
        GaugeStudy study = GaugeStudy.Run(readings).ValueOrThrow();
        Assert.Equal(0, study[StudyPart.Gauge].Variance);
        Assert.Null(study.Categories);
        Assert.All(study.Rows, row => Assert.Null(row.Test));
    }

    private static Failure Refusal(IReadOnlyList<Reading> readings) => GaugeStudy.Run(readings).TryGet(out _, out Failure? failure) ? throw new InvalidOperationException("not refused") : failure;
}
