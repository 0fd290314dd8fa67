namespace MarkReader.Application.Studies;

/// <summary>What is studied.</summary>
public enum StudyKind
{
    /// <summary>How well the same marks are read again: repeatability and reproducibility.</summary>
    Marks,

    /// <summary>How far the marks of repeated pulses at one station scatter.</summary>
    Pulses,
}
