using MarkReader.Quantities;

namespace MarkReader.Application.Measuring;

/// <summary>Refusals of what a user measured of the print and the tape, and of the places they name.</summary>
public static class ReadingFailures
{
    public static readonly FailureCode RulerMissing = Bad("RULER_MISSING");
    public static readonly FailureCode RulerInvalid = Bad("RULER_INVALID");
    public static readonly FailureCode RulerUncertaintyInvalid = Bad("RULER_UNCERTAINTY_INVALID");
    public static readonly FailureCode TapeHeightMissing = Bad("TAPE_HEIGHT_MISSING");
    public static readonly FailureCode TapeHeightInvalid = Bad("TAPE_HEIGHT_INVALID");
    public static readonly FailureCode TapeHeightUncertaintyInvalid = Bad("TAPE_HEIGHT_UNCERTAINTY_INVALID");

    /// <summary>Nothing at a named place can be measured as a mark.</summary>
    public static readonly FailureCode NothingThere = new("NOTHING_THERE", FailureKind.NotMeasurable);

    /// <summary>Two named places belong to one mark.</summary>
    public static readonly FailureCode SameMarkNamed = Bad("SAME_MARK_NAMED");

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
