using System.Text.Json;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;

namespace MarkReader.Service.Api.Answers;

/// <summary>Why there is no report.</summary>
/// <param name="Code">Stable name of the refusal.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Hint">What to do.</param>
internal sealed record RefusalAnswer(string Code, string Message, string Hint)
{
    public static RefusalAnswer? From(KeptAnswer answer) => answer is KeptAnswer.Refusal { Failure: var failure }
        ? new(failure.Code.Name, failure.Message, failure.Hint)
        : null;
}

/// <summary>Reads reports back from what is kept.</summary>
internal static class KeptReports
{
    public static T? Read<T>(KeptAnswer answer)
        where T : class => answer is KeptAnswer.Report { Json: var json } ? JsonSerializer.Deserialize<T>(json, ReportJson.Options) : null;
}
