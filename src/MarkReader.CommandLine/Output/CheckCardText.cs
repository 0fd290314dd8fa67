using MarkReader.Application.Cameras;
using MarkReader.Application.CardChecks;

namespace MarkReader.CommandLine.Output;

/// <summary>A checked card for people.</summary>
internal static class CheckCardText
{
    public static string Of(CardCheckReport report)
    {
        Table views = new(CameraTexts.Get("camera.photo"), CameraTexts.Get("camera.tilt"), OutputTexts.Get("checkCard.used"), CameraTexts.Get("camera.residual"));
        foreach (CheckedViewReport v in report.Views)
            views.Add(v.Name, v.TiltDegrees is { } tilt ? Words.Fixed(tilt, 0) : "-", CardCheckWords.Used(v), Words.Fixed(v.ResidualPx, 3));
        return string.Join(
            Environment.NewLine,
            [
                OutputTexts.Say("checkCard.head", report.Card.Kind, report.Views.Count(v => v.Used), report.Views.Count + report.Refused.Count, report.Camera),
                CardCheckWords.Verdict(report).ToString(),
                .. CardCheckWords.Advice(report).Select(a => $"- {a}"),
                "",
                .. CardCheckWords.Facts(report).Select(f => f.ToString()),
                "",
                views.ToString(),
            ]);
    }
}
