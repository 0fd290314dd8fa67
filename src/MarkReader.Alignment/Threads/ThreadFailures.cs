using MarkReader.Quantities;

namespace MarkReader.Alignment.Threads;

/// <summary>Refusals of a thread's name or pitch.</summary>
public static class ThreadFailures
{
    public static readonly FailureCode Unknown = new("THREAD_UNKNOWN", FailureKind.BadInput);
    public static readonly FailureCode PitchInvalid = new("THREAD_PITCH_INVALID", FailureKind.BadInput);
}
