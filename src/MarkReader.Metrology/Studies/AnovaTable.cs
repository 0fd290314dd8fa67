namespace MarkReader.Metrology.Studies;

/// <summary>A source of scatter in the table.</summary>
public enum AnovaSource
{
    Part,
    Operator,

    /// <summary>Operator × part.</summary>
    Interaction,

    /// <summary>From photo to photo of one operator, all parts alike.</summary>
    Photo,

    /// <summary>Equipment: what is left between repeats.</summary>
    Repeatability,

    /// <summary>Interaction and repeatability together.</summary>
    Pooled,
    Total,
}

/// <summary>A row.</summary>
/// <param name="Test">Null where there is nothing to test, or where the denominator is zero.</param>
public sealed record AnovaRow(AnovaSource Source, double SumOfSquares, double Dof, double MeanSquare, AnovaTest? Test);

/// <summary>A test that the source adds nothing.</summary>
/// <param name="F">The ratio.</param>
/// <param name="Probability">Of a ratio at least as large when it adds nothing.</param>
/// <param name="Against">Sources whose mean squares stand in the denominator.</param>
public sealed record AnovaTest(double F, double Probability, IReadOnlyList<AnovaSource> Against);

/// <summary>What parts and operators are tested against.</summary>
public enum AnovaDenominator
{
    /// <summary>The interaction: right where operators and parts are samples of many (AIAG's appendix A).</summary>
    Interaction,

    /// <summary>Repeatability, as AIAG's worked example does; too ready to find an effect where there is an interaction.</summary>
    Repeatability,
}

/// <summary>Sets up the table of a study.</summary>
internal sealed class AnovaTable(CrossedSquares squares, AnovaDenominator denominator)
{
    public MeanSquare PooledSquare { get; } = new(
        (squares.Interaction.SumOfSquares + squares.Repeat.SumOfSquares) / (squares.Interaction.Dof + squares.Repeat.Dof), squares.Interaction.Dof + squares.Repeat.Dof);

    /// <summary>The test of the interaction, on which pooling depends.</summary>
    public AnovaTest? Interaction { get; } = Test(squares.Interaction, squares.Repeat, AnovaSource.Repeatability);

    public IReadOnlyList<AnovaRow> Rows(bool pooled)
    {
        AnovaSource source = pooled ? AnovaSource.Pooled : denominator == AnovaDenominator.Interaction ? AnovaSource.Interaction : AnovaSource.Repeatability;
        MeanSquare below = pooled ? PooledSquare : source == AnovaSource.Interaction ? squares.Interaction : squares.Repeat;
        List<AnovaRow> rows =
        [
            Row(AnovaSource.Part, squares.Part, Test(squares.Part, below, source)),
            Row(AnovaSource.Operator, squares.Operator, OfOperator(pooled, below, source)),
            Row(AnovaSource.Interaction, squares.Interaction, Interaction),
        ];
        if (squares.Photo is { } photo)
            rows.Add(Row(AnovaSource.Photo, photo, pooled ? Test(photo, PooledSquare, AnovaSource.Pooled) : Test(photo, squares.Repeat, AnovaSource.Repeatability)));
        rows.Add(Row(AnovaSource.Repeatability, squares.Repeat, null));
        double sum = rows.Sum(r => r.SumOfSquares), dof = rows.Sum(r => r.Dof);
        if (pooled)
            rows.Add(Row(AnovaSource.Pooled, PooledSquare, null));
        rows.Add(new(AnovaSource.Total, sum, dof, sum / dof, null));
        return rows;
    }

    // An operator's mean holds the photos' scatter as well.
    private AnovaTest? OfOperator(bool pooled, MeanSquare below, AnovaSource source)
    {
        if (squares.Photo is not { } photo || denominator == AnovaDenominator.Repeatability)
            return Test(squares.Operator, below, source);
        if (pooled)
            return Test(squares.Operator, photo, AnovaSource.Photo);
        // No single mean square has the right expectation: W. G. Cochran's ratio of sums, Biometrics 7 (1951) 17–32.
        MeanSquare above = MeanSquare.Sum(squares.Operator, squares.Repeat), under = MeanSquare.Sum(photo, squares.Interaction);
        return under.Value <= 0 ? null : new(above.Value / under.Value, FDistribution.Tail(above.Value / under.Value, above.Dof, under.Dof), [AnovaSource.Photo, AnovaSource.Interaction]);
    }

    private static AnovaTest? Test(MeanSquare above, MeanSquare below, AnovaSource against) =>
        below.Value <= 0 ? null : new(above.Value / below.Value, FDistribution.Tail(above.Value / below.Value, above.Dof, below.Dof), [against]);

    private static AnovaRow Row(AnovaSource source, MeanSquare square, AnovaTest? test) => new(source, square.SumOfSquares, square.Dof, square.Value, test);
}
