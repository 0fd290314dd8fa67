namespace MarkReader.Metrology.Studies;

/// <summary>How each part of the variance follows from the mean squares: expected mean squares of a crossed random model, solved.</summary>
/// <remarks>Without photos as in R. K. Burdick, C. M. Borror and D. C. Montgomery, J. Qual. Technol. 35 (2003) 342–354; with them the repeats of an operator are blocks of all parts.</remarks>
internal static class GaugeModel
{
    /// <summary>The mean squares that estimate a part, each with its factor.</summary>
    public static IReadOnlyList<WeightedSquare> Terms(StudyPart of, CrossedSquares s, StudySize size)
    {
        (double p, double o, double r) = (size.Parts, size.Operators, size.Repeats);
        return of switch
        {
            StudyPart.Photo => s.Photo is { } f ? [new(1 / p, f), new(-1 / p, s.Repeat)] : [],
            StudyPart.Within => [new(1, s.Repeat)],
            StudyPart.Repeatability => s.Photo is { } f ? [new(1 / p, f), new((p - 1) / p, s.Repeat)] : [new(1, s.Repeat)],
            StudyPart.Operator => s.Photo is { } f
                ? [new(1 / (p * r), s.Operator), new(-1 / (p * r), s.Interaction), new(-1 / (p * r), f), new(1 / (p * r), s.Repeat)]
                : [new(1 / (p * r), s.Operator), new(-1 / (p * r), s.Interaction)],
            StudyPart.Interaction => [new(1 / r, s.Interaction), new(-1 / r, s.Repeat)],
            StudyPart.Reproducibility => s.Photo is { } f
                ? [new(1 / (p * r), s.Operator), new((p - 1) / (p * r), s.Interaction), new(-1 / (p * r), f), new(-(p - 1) / (p * r), s.Repeat)]
                : [new(1 / (p * r), s.Operator), new((p - 1) / (p * r), s.Interaction), new(-1 / r, s.Repeat)],
            StudyPart.Gauge => s.Photo is { } f
                ? [new(1 / (p * r), s.Operator), new((p - 1) / (p * r), s.Interaction), new((r - 1) / (p * r), f), new((p - 1) * (r - 1) / (p * r), s.Repeat)]
                : [new(1 / (p * r), s.Operator), new((p - 1) / (p * r), s.Interaction), new((r - 1) / r, s.Repeat)],
            StudyPart.Parts => [new(1 / (r * o), s.Part), new(-1 / (r * o), s.Interaction)],
            _ => throw new ArgumentOutOfRangeException(nameof(of), of, null),
        };
    }

    /// <summary>The mean squares to be expected of components with these variances.</summary>
    /// <param name="photo">Null for a model without photos.</param>
    public static CrossedSquares Expected(StudySize size, double part, double @operator, double interaction, double? photo, double within)
    {
        (double p, double o, double r) = (size.Parts, size.Operators, size.Repeats);
        double cell = within + (r * interaction), block = p * (photo ?? 0);
        return new(
            new(cell + (o * r * part), p - 1),
            new(cell + block + (p * r * @operator), o - 1),
            new(cell, (p - 1) * (o - 1)),
            photo is null ? null : new MeanSquare(within + block, o * (r - 1)),
            new(within, (photo is null ? p : p - 1) * o * (r - 1)));
    }
}

/// <summary>Counts of a crossed study, each at least 2.</summary>
public sealed record StudySize(int Parts, int Operators, int Repeats)
{
    public int Readings => Parts * Operators * Repeats;
}

/// <summary>A part of the variance of a reading.</summary>
public enum StudyPart
{
    /// <summary>Photo to photo of one operator, all marks alike.</summary>
    Photo,

    /// <summary>What differs from mark to mark within a photo.</summary>
    Within,

    /// <summary>One operator, one part, again: equipment variation; the two above together.</summary>
    Repeatability,

    /// <summary>Operators, on average over the parts.</summary>
    Operator,

    /// <summary>Operators that differ more at some parts.</summary>
    Interaction,

    /// <summary>The two above together: appraiser variation.</summary>
    Reproducibility,

    /// <summary>Repeatability and reproducibility together: the gauge.</summary>
    Gauge,

    /// <summary>The parts themselves; here where the marks were put.</summary>
    Parts,
    Total,
}
