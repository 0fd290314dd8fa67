using System.Text.Json;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The marks of a study's photo as they are kept (JSON). They are read again to the last digit.</summary>
internal static class StudyMarksText
{
    public static string Write(IReadOnlyList<StudyMark> marks) => JsonSerializer.Serialize(
        marks.Select(m => new Kept(m.At.Point.U, m.At.Point.V, Of(m.At.Covariance), Of(m.Own), Of(m.View))), JsonSerializerOptions.Web);

    public static IReadOnlyList<StudyMark> Read(string json) =>
        [.. JsonSerializer.Deserialize<Kept[]>(json, JsonSerializerOptions.Web)!.Select(k => new StudyMark(new(new(k.U, k.V), To(k.Whole)), To(k.Own), To(k.View)))];

    private static double[] Of(Covariance2 c) => [c.Uu, c.Uv, c.Vv];

    private static Covariance2 To(double[] c) => new(c[0], c[1], c[2]);

    /// <param name="Whole">uu, uv, vv, mm², as the two others.</param>
    private sealed record Kept(double U, double V, double[] Whole, double[] Own, double[] View);
}
