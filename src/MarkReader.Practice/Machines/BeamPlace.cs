namespace MarkReader.Practice.Machines;

/// <summary>What the beam meets, in order.</summary>
public enum BeamPlace
{
    MirrorOne,
    MirrorTwo,
    HeadEntry,
    MirrorThree,
    Lens,
    Nozzle,

    /// <summary>The tape of the station at which the pulse is fired.</summary>
    Tape,
}
