namespace MarkReader.Alignment.Centring;

/// <summary>The steps of the job, in their order. A change to one makes the later ones stale: their marks are to be fired again on clean tape.</summary>
public enum JobStep
{
    LegOne,
    LegTwo,
    Survey,
    Centring,
    LegThree,
}
