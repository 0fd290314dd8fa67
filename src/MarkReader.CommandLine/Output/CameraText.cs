using MarkReader.Application.Cameras;
using MarkReader.Cameras.Calibration;
using static MarkReader.Quantities.Texts<MarkReader.Application.Cameras.CameraTexts>;

namespace MarkReader.CommandLine.Output;

/// <summary>A calibrated camera for people.</summary>
internal static class CameraText
{
    public static string Of(CameraFinding finding, string file)
    {
        CalibratedCamera found = finding.Calibration;
        int all = found.Views.Count + found.Dropped.Count + finding.Refused.Count;
        Table parameters = new("", Get("camera.value"), Get("camera.uncertainty"), "");
        for (int i = 0; i < CalibratedCamera.Names.Count; i++)
        {
            if (found.StandardUncertainties[i] > 0)
                parameters.Add(CalibratedCamera.Names[i], Words.Fixed(found.Values[i], Places(i)), Words.Fixed(found.StandardUncertainties[i], Places(i)), CameraWords.Parameter(CalibratedCamera.Names[i]));
        }

        Table views = new(Get("camera.photo"), Get("camera.tilt"), Get("camera.sections"), Get("camera.residual"));
        for (int i = 0; i < found.Views.Count; i++)
            views.Add(found.Views[i].Name, Words.Fixed(finding.Coverage.Places[i].Tilt.Degrees, 0), $"{found.Views[i].Used}", Words.Fixed(found.Views[i].ResidualPx, 3));
        return string.Join(Environment.NewLine, [
            Say("camera.head", finding.Profile.Name, found.Camera.Photo.Width, found.Camera.Photo.Height, found.Views.Count, all, found.ResidualPx),
            parameters.ToString(),
            Say("camera.doubt", finding.Profile.LensDoubtPx),
            .. Terms(found),
            views.ToString(),
            .. found.Dropped.Select(d => Say("camera.droppedView", d.Name, d.ResidualPx, d.OthersPx)),
            .. finding.Refused.Select(r => Say("camera.refused", r.Name, r.Failure.Message, r.Failure.Hint)),
            .. finding.Coverage.Missing.Count == 0 ? [] : new[] { Say("camera.missing", string.Join("; ", finding.Coverage.Missing.Select(CameraWords.Need))) },
            .. finding.Profile.Traits.Tell ? [] : new[] { Get("camera.anonymous") },
            Get("camera.wide"),
            OutputTexts.Say("camera.written", file),
        ]);
    }

    private static IEnumerable<string> Terms(CalibratedCamera found)
    {
        string[] kept = [.. found.Evidence.Where(e => e.Kept).Select(e => CameraWords.Term(e.Term))];
        string[] left = [.. found.Evidence.Where(e => !e.Kept).Select(e => CameraWords.Term(e.Term))];
        if (kept.Length > 0)
            yield return Say("camera.terms", string.Join(", ", kept));
        if (left.Length > 0)
            yield return Say("camera.left", string.Join(", ", left));
    }

    /// <summary>px to hundredths, mm to thousandths, coefficients to 1e-5.</summary>
    private static int Places(int parameter) => parameter < 4 ? 3 : parameter < 10 ? 6 : 4;
}
