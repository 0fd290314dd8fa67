using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;

namespace MarkReader.Application.Cameras;

/// <summary>What calibrations speak of, in words.</summary>
public static class CameraWords
{
    public static string Need(ViewNeed need) => CameraTexts.Say($"need.{need}", BoardCoverage.EnoughViews);

    public static string Term(CameraTerms term) => CameraTexts.Get($"term.{term}");
}
