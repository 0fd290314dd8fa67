using MarkReader.Quantities;

namespace MarkReader.Application.Advising;

/// <summary>Refusals of a visit file.</summary>
public static class AdvisingFailures
{
    public static readonly FailureCode Unreadable = new("VISIT_UNREADABLE", FailureKind.BadInput);
}
