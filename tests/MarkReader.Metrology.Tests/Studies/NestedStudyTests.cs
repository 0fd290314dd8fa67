using System.Globalization;
using MarkReader.Metrology.Studies;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>Resistivity of five wafers, probe 2362: NIST/SEMATECH e-Handbook of Statistical Methods, 2.4.4 and 2.6.1 (MPC61.DAT), in ohm·cm.</summary>
public sealed class NestedStudyTests
{
    // Two runs of a wafer one below the other: six daily means, six daily standard deviations.
    private const string Data =
        """
        95.1162 95.0569 95.0598 95.1487 95.0743 95.1010 .0480 .0577 .0516 .0386 .0256 .0420
        95.1687 95.1564 95.1354 95.0422 95.1354 95.1075 .0785 .0430 .0983 .0773 .0587 .0776
        99.2939 99.3234 99.2748 99.3512 99.2350 99.3574 .0818 .0723 .0756 .0475 .0517 .0485
        99.3408 99.3116 99.3241 99.2991 99.3049 99.2782 .1279 .1131 .0519 .0903 .0783 .0718
        96.0771 95.9976 96.0148 96.0397 96.0407 96.0445 .1024 .0943 .0622 .0702 .0627 .0622
        96.0793 96.1115 96.0803 96.0411 96.0988 96.0482 .0996 .0533 .0364 .0768 .1042 .0868
        101.0471 101.0224 101.0702 101.0904 101.0626 101.0686 .0320 .1020 .0580 .1049 .0702 .0661
        101.1353 101.1201 101.0946 100.9977 101.0963 101.0300 .0585 .0868 .0855 .0645 .0638 .0549
        94.2437 94.2115 94.2348 94.2124 94.2214 94.1651 .0503 .0919 .0282 .0513 .0627 .1010
        94.2052 94.2824 94.2396 94.2087 94.2937 94.2330 .0813 .0605 .0882 .0702 .0591 .0556
        """;

    private static IReadOnlyList<IReadOnlyList<IReadOnlyList<NestedOccasion>>> Wafers =>
    [
        .. Data.Split('\n').Select(line =>
        {
            double[] n = [.. line.Split(' ').Select(c => double.Parse(c, CultureInfo.InvariantCulture))];
            return (IReadOnlyList<NestedOccasion>)[.. n.Take(6).Zip(n.Skip(6), (mean, sd) => new NestedOccasion(mean, sd))];
        }).Chunk(2),
    ];

    /// <summary>s1 and s2 recomputed from the file; s3 printed as 0.0197 from rounded values, 0.0196452 recomputed.</summary>
    [Fact]
    public void The_three_levels_are_those_of_the_handbook()
    {
        NestedStudy study = NestedStudy.Run(Wafers, 6).ValueOrThrow();
        Assert.Equal((300, 50, 5), (study.Repeatability.Dof, study.Days.Dof, study.Runs.Dof));
        Assert.Equal(0.0728667, Math.Sqrt(study.Repeatability.Value), 6e-8);
        Assert.Equal(0.0361682, Math.Sqrt(study.Days.Value), 6e-8);
        Assert.Equal(0.0196452, Math.Sqrt(study.Runs.Value), 6e-8);
        Assert.Equal(0.0197, Math.Sqrt(study.Runs.Value), 0.0001);
        Assert.Equal(0.000423215, study.DayVariance, 6e-10);
        Assert.Equal(0.000167912, study.RunVariance, 6e-10);
        Assert.InRange(study.DayVariance, study.DayInterval.Low, study.DayInterval.High);
        Assert.InRange(study.RunVariance, study.RunInterval.Low, study.RunInterval.High);
    }

    [Fact]
    public void A_wafer_with_a_day_missing_is_refused()
    {
        Assert.False(NestedStudy.Run([.. Wafers.Take(4), [Wafers[4][0], [.. Wafers[4][1].Take(5)]]], 6).TryGet(out _, out Quantities.Failure? failure));
        Assert.Equal(StudyFailures.Unbalanced, failure.Code);
    }
}
