using System.Text;
using System.Text.Json;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Advising;

/// <summary>Visit files and what is answered to them, as other programs see both.</summary>
internal static class VisitTexts
{
    public const string Legs = """
        [ { "name": "1", "nearPath": 80, "farPath": 480, "pathUncertainty": 2, "incidenceDegrees": 45, "tolerance": 0.5,
            "frame": { "pivot": "lowerLeft", "screws": [ { "name": "A", "at": "lowerRight" }, { "name": "B", "at": "upperLeft" } ], "arm": 30, "pitch": 0.7 } },
          { "name": "2", "nearPath": 60, "farPath": 560, "pathUncertainty": 2, "incidenceDegrees": 0, "tolerance": 0.5, "frame": { } } ]
        """;

    public const string Machine = $$"""
        { "legs": {{Legs}}, "bed": { "x": 500, "y": 400, "tolerance": 0.5 }, "aperture": { "diameter": 18, "beamDiameter": 5 }, "washers": [0.5, 0.8, 1.0, 1.6] }
        """;

    public static string Visit(string machine, params string[] events) => $$"""{ "machine": {{machine}}, "events": [ {{string.Join(", ", events)}} ] }""";

    public static Outcome<VisitAdvice> Advise(string text) => AdviseVisit.Run(Encoding.UTF8.GetBytes(text));

    public static JsonElement Answer(string text) => JsonDocument.Parse(ReportJson.Write(VisitReport.From(Advise(text).ValueOrThrow()))).RootElement;
}
