namespace MarkReader.Alignment.Screws;

/// <summary>A mark that does not lie where any sense of the screws puts it.</summary>
/// <param name="Event">Index of the event that shows it: the mark's own, or that of its repetition.</param>
/// <param name="Mark">The mark.</param>
/// <param name="Expected">Where it was expected under the likeliest hypothesis.</param>
/// <param name="Probability">Of a mark at least as far off, at best over the hypotheses.</param>
/// <param name="Turned">Screws turned since the mark before it; empty when nothing was turned.</param>
/// <param name="Reading">What was made of it.</param>
internal sealed record Misfit(
    int Event, LegEvent.Mark Mark, MarkForecast Expected, double Probability, IReadOnlyList<string> Turned, MisfitReading Reading);

internal enum MisfitReading
{
    /// <summary>Cannot be chance: something slipped, moved or was entered wrongly. The beam's line starts anew from this mark.</summary>
    Contradiction,

    /// <summary>Improbable, and not yet repeated.</summary>
    Doubtful,

    /// <summary>Improbable, repeated, and the repetition agrees with it: kept.</summary>
    Confirmed,

    /// <summary>Improbable, and a repetition lies where it was expected: left out.</summary>
    Outlier,
}
