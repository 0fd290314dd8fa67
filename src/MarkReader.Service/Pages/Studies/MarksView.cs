using MarkReader.Application.Studies;
using MarkReader.Metrology.MonteCarlo;
using MarkReader.Metrology.Studies;
using MarkReader.Service.Display;

namespace MarkReader.Service.Pages.Studies;

/// <summary>The result of a study of marks as its page shows it.</summary>
public sealed class MarksView(StudyAnswer answer, Figures figures)
{
    // Where the largest of them decides what to do.
    private static readonly StudyPart[] s_single = [StudyPart.Photo, StudyPart.Within, StudyPart.Operator, StudyPart.Interaction];

    public StudyAnswer Answer => answer;

    /// <summary>fits, undecided, tooCoarse.</summary>
    public string Kind => StudyWords.Verdict(answer) switch { StudyVerdict.Fits => "fits", StudyVerdict.TooCoarse => "tooCoarse", _ => "undecided" };

    public string Word => StudyWords.Word(answer);

    public string Claim => StudyWords.Claim(answer);

    public string Result => StudyWords.Result(answer, figures.Record);

    /// <summary>The text that says what to do: that nothing is, or what the largest part asks for.</summary>
    public string Todo => StudyWords.Verdict(answer) == StudyVerdict.Fits ? "Fits" : s_single.Where(answer.Worse.Study.Components.ContainsKey).MaxBy(p => answer.Worse.Study[p].Variance).ToString();

    public IReadOnlyList<string> Advice =>
        [.. answer.Axes.Select(a => StudyWords.Stated(a, figures.Record)).Append(StudyWords.Suspect(answer)).OfType<string>(), figures.Sentence(StudyWords.Plan(answer.Plan))];

    public IReadOnlyList<string> Notes => [.. StudyWords.Notes(answer, figures.Record)];

    public IEnumerable<StudyPart> Parts => StudyWords.Order(answer.Request.Readings.Photos).Where(p => p != StudyPart.Parts);

    public string Name(StudyPart part) => StudyWords.Name(part, answer.Request.Readings.Photos);

    public string Share(StudyAxis axis, StudyPart part) => StudyWords.Share(axis.Study, part) is { } share ? figures.Sign(StudyWords.Percent(share)) : "–";

    /// <summary>Of the gauge, % of the full tolerance width, with its interval.</summary>
    public (double Percent, double Low, double High) OfTolerance(StudyAxis axis)
    {
        (double percent, Interval interval) = axis.Study.OfTolerance(StudyPart.Gauge, StudyWords.FullWidth(answer));
        return (percent, interval.Low, interval.High);
    }
}
