using MarkReader.Metrology.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>The scatter of pulses at one station.</summary>
/// <param name="Path">From the source mirror; null when no angle is wanted.</param>
/// <param name="Plan">How many pulses a wanted width needs.</param>
public sealed record ScatterAnswer(PulseMarks Marks, PulseScatter Scatter, Length? Path, PulsePlan Plan)
{
    /// <summary>Largest value that is offered for a machine, mm (common practice, no source); a machine's document takes up to 5 mm.</summary>
    public const double MostOffered = 1;

    /// <summary>The value for a machine's pulseScatter, mm, to 0.001 and not below it; null when none is offered.</summary>
    public double? ForVisits => NotOffered is null ? Math.Max(0.001, Math.Round(Scatter.ForVisits.Millimetres, 3)) : null;

    /// <summary>Why no value is offered; null when one is.</summary>
    public Failure? NotOffered
    {
        get
        {
            double value = Scatter.ForVisits.Millimetres;
            if (Scatter.IsStill)
                return new(StudyInputFailures.NotOffered, StudyTexts.Get("scatterAnswer.still"), StudyTexts.Get("scatterAnswer.stillHint"));
            if (IsHidden && value is <= 0 or > MostOffered)
                return new(StudyInputFailures.NotOffered, StudyTexts.Get("scatterAnswer.hidden"), StudyTexts.Get("scatterAnswer.hiddenHint"));
            return value > MostOffered
                ? new(StudyInputFailures.NotOffered, StudyTexts.Word("scatterAnswer.far", new SaidLength(MostOffered)), StudyTexts.Get("scatterAnswer.farHint"))
                : null;
        }
    }

    /// <summary>Whether the photos' own uncertainty explains all scatter.</summary>
    public bool IsHidden => !Scatter.IsStill && Scatter.Component.Corrected == 0;

    /// <summary>u or v when marks scatter clearly more along it; null otherwise.</summary>
    public string? LargerAxis => Scatter.LargerAxis is not { } larger ? null : ReferenceEquals(larger, Scatter.U) ? "u" : "v";

    /// <summary>Of the larger principal axis from u, in whole degrees above −90 up to 90.</summary>
    public double Direction
    {
        get
        {
            double whole = Math.Round(Scatter.Principal.Direction.Degrees);
            // Adding 0 makes 0 of −0.
            return (whole > 90 ? whole - 180 : whole <= -90 ? whole + 180 : whole) + 0.0;
        }
    }
}
