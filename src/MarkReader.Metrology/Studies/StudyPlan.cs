using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Texts;
using MarkReader.Quantities;

namespace MarkReader.Metrology.Studies;

/// <summary>Shares of the gauge's variance that a plan reckons with; only their proportions count.</summary>
/// <param name="Photo">Photo to photo; 0 where repeats are separate readings.</param>
public sealed record ExpectedShares(double Operator, double Interaction, double Photo, double Within)
{
    /// <summary>A guess, no source: half of the repeatability common to a photo's marks, a quarter of the whole between people.</summary>
    public static ExpectedShares Usual { get; } = new(0.25, 0, 0.375, 0.375);

    /// <summary>What a study found.</summary>
    public static ExpectedShares Of(GaugeStudy study) => new(
        study[StudyPart.Operator].Variance, study[StudyPart.Interaction].Variance,
        study.Components.TryGetValue(StudyPart.Photo, out VarianceComponent? photo) ? photo.Variance : 0, study[StudyPart.Within].Variance);

    public double Sum => Operator + Interaction + Photo + Within;
}

/// <summary>A size of study with the interval of the gauge's standard deviation to be expected, as factors of it.</summary>
public sealed record PlannedStudy(StudySize Size, Interval Factors)
{
    /// <summary>Photos to be taken.</summary>
    public int Photos => Size.Operators * Size.Repeats;

    /// <summary>Half of the interval's width.</summary>
    public double HalfWidth => Factors.Width / 2;
}

/// <summary>How many people and photos a study needs.</summary>
/// <param name="Rows">For each number of people the fewest photos that reach the wanted width, or, where none do, the most photos that were tried.</param>
/// <param name="Best">The fewest photos of all that reach it; null when none does.</param>
public sealed record StudyPlan(double Wanted, IReadOnlyList<PlannedStudy> Rows, PlannedStudy? Best)
{
    /// <summary>Most people and photos each that a plan tries, and most marks.</summary>
    public const int MostOperators = 12, MostRepeats = 20, MostParts = 50;

    /// <summary>The plan for a half-width of the 95 % interval as a part of the gauge's standard deviation.</summary>
    /// <param name="wanted">0.1 to 2.</param>
    /// <param name="parts">Marks in each photo, 2 to 50.</param>
    public static Outcome<StudyPlan> For(double wanted, int parts, ExpectedShares shares)
    {
        if (wanted is not (>= 0.1 and <= 2))
            return new Failure(StudyFailures.OptionInvalid, MetrologyTexts.Get("studyPlan.wantedHalfWidthNotBetween"), MetrologyTexts.Get("studyPlan.giveAsPartStandardDeviation"));
        if (parts is not (>= 2 and <= MostParts))
            return new Failure(StudyFailures.OptionInvalid, MetrologyTexts.Get("studyPlan.numberMarksNotBetweenAnd"), MetrologyTexts.Get("studyPlan.giveMarksThatEachPhoto"));
        List<PlannedStudy> rows = [];
        for (int people = 2; people <= MostOperators; people++)
        {
            IEnumerable<PlannedStudy> tries = Enumerable.Range(2, MostRepeats - 1).Select(r => Of(new(parts, people, r), shares));
            rows.Add(tries.FirstOrDefault(t => t.HalfWidth <= wanted) ?? Of(new(parts, people, MostRepeats), shares));
        }

        return new StudyPlan(wanted, rows, rows.Where(r => r.HalfWidth <= wanted).OrderBy(r => r.Photos).ThenBy(r => r.Size.Operators).FirstOrDefault());
    }

    /// <summary>The interval that mean squares at their expectations give.</summary>
    public static PlannedStudy Of(StudySize size, ExpectedShares shares)
    {
        double sum = shares.Sum > 0 ? shares.Sum : 1, within = shares.Sum > 0 ? shares.Within : 1;
        CrossedSquares squares = GaugeModel.Expected(size, 0, shares.Operator / sum, shares.Interaction / sum, shares.Photo / sum, within / sum);
        Interval variance = VarianceIntervals.Of(GaugeModel.Terms(StudyPart.Gauge, squares, size));
        return new(size, new(Math.Sqrt(variance.Low), Math.Sqrt(variance.High)));
    }
}
