using MarkReader.Quantities;

namespace MarkReader.Alignment.Frames;

/// <summary>Refusals of a mirror frame's description.</summary>
public static class FrameFailures
{
    public static readonly FailureCode ArmInvalid = Bad("FRAME_ARM_INVALID");
    public static readonly FailureCode PitchInvalid = Bad("FRAME_PITCH_INVALID");
    public static readonly FailureCode ContactsInvalid = Bad("FRAME_CONTACTS_INVALID");
    public static readonly FailureCode ScrewNameInvalid = Bad("FRAME_SCREW_NAME_INVALID");
    public static readonly FailureCode IncidenceInvalid = Bad("FRAME_INCIDENCE_INVALID");

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
