using System.Text.Json;
using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>What the program answered: a report as JSON, or a refusal.</summary>
public abstract record KeptAnswer
{
    private KeptAnswer()
    {
    }

    /// <summary>The report of a measurement or an aim.</summary>
    public sealed record Report(string Json) : KeptAnswer;

    /// <summary>The reason why there is none.</summary>
    public sealed record Refusal(Failure Failure) : KeptAnswer;

    internal static KeptAnswer From(string? report, string? refusal)
    {
        if (report is not null)
            return new Report(report);
        RefusalText text = JsonSerializer.Deserialize<RefusalText>(refusal!, JsonSerializerOptions.Web)!;
        return new Refusal(new(new(text.Code, Enum.Parse<FailureKind>(text.Kind)), text.Message, text.Hint));
    }

    internal string? ReportText => (this as Report)?.Json;

    internal string? RefusalJson => this is Refusal { Failure: var failure }
        ? JsonSerializer.Serialize(
            new RefusalText(failure.Code.Name, failure.Code.Kind.ToString(), failure.Message, failure.Hint),
            JsonSerializerOptions.Web)
        : null;

    private sealed record RefusalText(string Code, string Kind, string Message, string Hint);
}

/// <summary>What was measured in a photo.</summary>
/// <param name="Answer">The report or the refusal.</param>
/// <param name="ProgramVersion">The version of the program that measured.</param>
/// <param name="MeasuredAt">When (UTC, to the millisecond).</param>
public sealed record KeptMeasurement(KeptAnswer Answer, string ProgramVersion, DateTimeOffset MeasuredAt);
