using MarkReader.Application.Propagating;
using MarkReader.Application.Reports;
using static MarkReader.Quantities.Texts<MarkReader.CommandLine.Output.OutputTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A Monte Carlo check for people.</summary>
internal static class PropagationText
{
    public static string Of(AimPropagation propagation)
    {
        PropagationReport report = PropagationReport.From(propagation);
        (PropagatedReport linear, PropagatedReport drawn) = (report.Linear, report.MonteCarlo);
        Table table = new(Get("propagation.aimPoint"), Get("propagation.linear"), Get("propagation.monteCarlo"), Get("propagation.tolerance"));
        table.Add("u/mm", Words.Place(linear.U), Words.Place(drawn.U), "");
        table.Add("v/mm", Words.Place(linear.V), Words.Place(drawn.V), "");
        table.Add(Get("propagation.standardUncertaintyUMm"), Words.Fixed(linear.StandardUncertaintyU, 4), Words.Fixed(drawn.StandardUncertaintyU, 4), "");
        table.Add(Get("propagation.standardUncertaintyVMm"), Words.Fixed(linear.StandardUncertaintyV, 4), Words.Fixed(drawn.StandardUncertaintyV, 4), "");
        table.Add(Get("propagation.correlation"), Words.Fixed(linear.Correlation, 3), Words.Fixed(drawn.Correlation, 3), "");
        table.Add(Get("propagation.95IntervalUMm"), Range(linear.IntervalU), Range(drawn.IntervalU), Words.Fixed(report.Tolerance.U, 4));
        table.Add(Get("propagation.95IntervalVMm"), Range(linear.IntervalV), Range(drawn.IntervalV), Words.Fixed(report.Tolerance.V, 4));
        table.Add(Get("propagation.heldByTheLinear"), "95.00 %", Words.Fixed(100 * report.Covered, 2) + " %", Words.Fixed(100 * AimPropagation.CoverageTolerance, 0) + " %");
        string[] lines =
        [
            table.ToString(),
            Say("propagation.trialsSeedLinearJCGM", report.Trials, report.Seed),
            report.Agrees
                ? Get("propagation.bothResultsAgreeWithin")
                : Get("propagation.theResultsDifferBy"),
            .. Words.Of(propagation.Finding.Warnings),
        ];
        return string.Join(Environment.NewLine, lines);
    }

    private static string Range(double[] interval) => Say("range", Words.Place(interval[0]), Words.Place(interval[1]));
}
