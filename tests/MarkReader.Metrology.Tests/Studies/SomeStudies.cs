using System.Globalization;
using MarkReader.Metrology.Studies;

namespace MarkReader.Metrology.Tests.Studies;

/// <summary>Published data.</summary>
internal static class SomeStudies
{
    /// <summary>10 parts × 3 appraisers × 3 trials: AIAG, Measurement Systems Analysis, 4th ed. 2010, ch. III; read in public test suites that quote it, not in the manual.</summary>
    public static IReadOnlyList<Reading> Aiag { get; } = ByOperator(
        """
        A  0.29 -0.56 1.34 0.47 -0.80  0.02 0.59 -0.31 2.26 -1.36
        A  0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25
        A  0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31
        B  0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68
        B  0.25 -1.22 0.94 1.03 -1.20  0.22 0.55  0.08 2.12 -1.62
        B  0.07 -0.68 1.34 0.20 -1.28  0.06 0.83 -0.34 2.19 -1.50
        C  0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49
        C -0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77
        C -0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16
        """);

    /// <summary>3 parts × 3 operators × 3 runs: E. L. Cano, J. M. Moguerza and A. Redchuk, Six Sigma with R, Springer 2012, ch. 5 (the R package SixSigma's ss.data.rr, time1).</summary>
    public static IReadOnlyList<Reading> SixSigma { get; } = ByOperator(
        """
        1 1.27 1.12 1.73
        1 0.90 1.09 1.28
        1 1.09 1.15 1.77
        2 1.34 1.24 1.64
        2 1.32 1.00 1.65
        2 1.27 1.14 1.77
        3 1.09 1.48 1.64
        3 1.26 1.15 1.44
        3 1.09 1.15 1.68
        """);

    // A line for each repeat: the operator, then the parts.
    private static IReadOnlyList<Reading> ByOperator(string table) =>
    [
        .. table.Split('\n').SelectMany((line, k) =>
        {
            string[] cells = line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            return cells.Skip(1).Select((cell, i) => new Reading($"{i + 1}", cells[0], $"{k}", double.Parse(cell, CultureInfo.InvariantCulture)));
        }),
    ];
}
