using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Calibration;

namespace MarkReader.Application.Cameras;

/// <summary>What calibrations speak of, in words.</summary>
public static class CameraWords
{
    public static string Need(ViewNeed need) => CameraTexts.Say($"need.{need}", BoardCoverage.EnoughViews);

    /// <summary>What a parameter is, from its name in files.</summary>
    public static string Parameter(string name) => CameraTexts.Get($"parameter.{name}");

    public static string Term(CameraTerms term) => CameraTexts.Get($"term.{term}");
}
