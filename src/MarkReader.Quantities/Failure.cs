namespace MarkReader.Quantities;

/// <summary>A refusal: what is wrong (one sentence, no full stop) and what to do about it (one sentence, no full stop).</summary>
public sealed record Failure
{
    public Failure(FailureCode code, Wording what, Wording remedy) => (Code, What, Remedy) = (code, what, remedy);

    public FailureCode Code { get; init; }

    /// <summary>What is wrong, with its lengths.</summary>
    public Wording What { get; init; }

    /// <summary>What to do about it, with its lengths.</summary>
    public Wording Remedy { get; init; }

    /// <summary>What is wrong, in mm.</summary>
    public string Message { get => What.ToString(); init => What = value; }

    /// <summary>What to do about it, in mm.</summary>
    public string Hint { get => Remedy.ToString(); init => Remedy = value; }

    /// <summary>The line for standard error: "CODE: what is wrong; what to do".</summary>
    public override string ToString() => $"{Code.Name}: {Message}; {Hint}";
}
