using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>A mark as the JSON of the contract has it: mm, mm² and px.</summary>
/// <param name="Covariance">[[uu, uv], [uv, vv]].</param>
/// <param name="X">Centre in its own photo, px.</param>
/// <param name="Budget">The covariance by source; null in results of earlier versions.</param>
public sealed record MarkReport(double U, double V, double[][] Covariance, double Diameter, double X, double Y, IReadOnlyList<ComponentReport>? Budget)
{
    public static MarkReport From(Mark mark) => new(
        mark.Centre.Point.U, mark.Centre.Point.V, Matrix(mark.Centre.Covariance), mark.Diameter.Millimetres, mark.Photo.X, mark.Photo.Y, ComponentReport.From(mark.Budget));

    internal static double[][] Matrix(Covariance2 c) => [[c.Uu, c.Uv], [c.Uv, c.Vv]];
}

/// <summary>A warning as JSON.</summary>
public sealed record WarningReport(string Code, string Message)
{
    public static IReadOnlyList<WarningReport> From(IEnumerable<Warning> warnings) => [.. warnings.Select(w => new WarningReport(w.Code, w.Message))];
}
