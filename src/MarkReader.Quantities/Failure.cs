namespace MarkReader.Quantities;

/// <summary>A refusal: what is wrong (one sentence, no full stop) and what to do about it (one sentence, no full stop).</summary>
public sealed record Failure(FailureCode Code, string Message, string Hint)
{
    /// <summary>The line for standard error: "CODE: what is wrong; what to do".</summary>
    public override string ToString() => $"{Code.Name}: {Message}; {Hint}";
}
