using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>Refusals of studies of repeated readings.</summary>
public static class StudyFailures
{
    /// <summary>Fewer than two parts, operators or repeats.</summary>
    public static readonly FailureCode TooSmall = new("STUDY_TOO_SMALL", FailureKind.BadInput);

    /// <summary>Not every operator measured every part equally often.</summary>
    public static readonly FailureCode Unbalanced = new("STUDY_UNBALANCED", FailureKind.BadInput);

    /// <summary>A part, operator and repeat that occurs twice.</summary>
    public static readonly FailureCode Repeated = new("STUDY_READING_TWICE", FailureKind.BadInput);

    /// <summary>A number that is not finite, or too many readings.</summary>
    public static readonly FailureCode ReadingInvalid = new("STUDY_READING_INVALID", FailureKind.BadInput);

    /// <summary>A limit, a width or a count that is out of its range.</summary>
    public static readonly FailureCode OptionInvalid = new("STUDY_OPTION_INVALID", FailureKind.BadInput);

    /// <summary>Fewer than three pulses.</summary>
    public static readonly FailureCode TooFewPulses = new("TOO_FEW_PULSES", FailureKind.BadInput);
}
