using MarkReader.Quantities;

namespace MarkReader.Application.Reports;

/// <summary>The JSON of a refusal: {"error": {"code", "message", "hint"}}.</summary>
public sealed record ErrorReport(ErrorBody Error)
{
    public static ErrorReport From(Failure failure) => new(new ErrorBody(failure.Code.Name, failure.Message, failure.Hint));
}

public sealed record ErrorBody(string Code, string Message, string Hint);
