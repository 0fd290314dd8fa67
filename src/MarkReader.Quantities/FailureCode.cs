namespace MarkReader.Quantities;

/// <summary>What a refusal is about; it decides the exit status and the HTTP status.</summary>
public enum FailureKind
{
    /// <summary>The call or an input file is wrong (exit status 2).</summary>
    BadInput,

    /// <summary>The photo is readable but cannot be measured (exit status 3).</summary>
    NotMeasurable,
}

/// <summary>A stable name for a refusal, in upper case with underscores, and its kind.</summary>
/// <remarks>Each project lists its own codes in one file named after its subject (PhotoFailures, AimFailures and so on).</remarks>
public sealed record FailureCode(string Name, FailureKind Kind)
{
    public override string ToString() => Name;
}
