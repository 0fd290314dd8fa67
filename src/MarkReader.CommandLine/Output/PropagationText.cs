using MarkReader.Application.Propagating;
using MarkReader.Application.Reports;

namespace MarkReader.CommandLine.Output;

/// <summary>A Monte Carlo check for people.</summary>
internal static class PropagationText
{
    public static string Of(AimPropagation propagation)
    {
        PropagationReport report = PropagationReport.From(propagation);
        (PropagatedReport linear, PropagatedReport drawn) = (report.Linear, report.MonteCarlo);
        Table table = new("aim point", "linear", "Monte Carlo", "tolerance");
        table.Add("u/mm", Words.Place(linear.U), Words.Place(drawn.U), "");
        table.Add("v/mm", Words.Place(linear.V), Words.Place(drawn.V), "");
        table.Add("standard uncertainty u/mm", Words.Fixed(linear.StandardUncertaintyU, 4), Words.Fixed(drawn.StandardUncertaintyU, 4), "");
        table.Add("standard uncertainty v/mm", Words.Fixed(linear.StandardUncertaintyV, 4), Words.Fixed(drawn.StandardUncertaintyV, 4), "");
        table.Add("correlation", Words.Fixed(linear.Correlation, 3), Words.Fixed(drawn.Correlation, 3), "");
        table.Add("95 % interval u/mm", Range(linear.IntervalU), Range(drawn.IntervalU), Words.Fixed(report.Tolerance.U, 4));
        table.Add("95 % interval v/mm", Range(linear.IntervalV), Range(drawn.IntervalV), Words.Fixed(report.Tolerance.V, 4));
        table.Add("held by the linear 95 % ellipse", "95.00 %", Words.Fixed(100 * report.Covered, 2) + " %", Words.Fixed(100 * AimPropagation.CoverageTolerance, 0) + " %");
        string[] lines =
        [
            table.ToString(),
            $"{report.Trials} trials, seed {report.Seed}; linear: JCGM 100, Monte Carlo: JCGM 101; tolerance: half a unit in the first digit of the standard uncertainty (JCGM 101, 7.9.2 and 8.1)",
            report.Agrees
                ? "both results agree within the numerical tolerance: the linear uncertainty stands"
                : "the results differ by more than the numerical tolerance: take the Monte Carlo result, and use more travel or better path lengths",
            .. Words.Of(propagation.Finding.Warnings),
        ];
        return string.Join(Environment.NewLine, lines);
    }

    private static string Range(double[] interval) => $"{Words.Place(interval[0])} to {Words.Place(interval[1])}";
}
