namespace MarkReader.Practice.Machines;

/// <summary>A leg of the beam.</summary>
public enum PracticeLeg
{
    /// <summary>Mirror one to mirror two's frame.</summary>
    One,

    /// <summary>Mirror two to the head's entry hole.</summary>
    Two,

    /// <summary>Mirror three to the bed.</summary>
    Three,
}
