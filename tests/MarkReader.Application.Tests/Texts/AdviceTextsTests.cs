using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.Application.Survey;

namespace MarkReader.Application.Tests.Texts;

/// <summary>The files named here were written while the sentences still stood in the code.</summary>
public sealed class AdviceTextsTests
{
    [Fact]
    public void Every_action_diagnosis_and_cure_reads_as_it_did_before_it_was_moved_to_the_resource_file() =>
        Assert.Equal(Recorded("actions.txt"), EveryAction.All());

    // Should the adviser come to advise otherwise, write the new visit to the file.
    [Fact]
    public void A_practice_visit_is_told_in_the_same_words()
    {
        PracticeSession session = PracticeSession.Begin(new PracticeRequest(20, Twist: 1.4), UsualStock.Washers, new StatedMarks()).ValueOrThrow();
        List<string> told = [];
        PlayPractice.Run(session, advice => told.AddRange([ActionWords.Of(advice.Action), advice.Reason, .. advice.Warnings.Select(w => w.Message), .. Survey(advice)])).ValueOrThrow();
        Assert.Equal(Recorded("practice.txt"), told);
    }

    private static IEnumerable<string> Survey(VisitAdvice advice) => advice.State.Survey?.Diagnosis is { } diagnosis
        ? new[] { SurveyWords.Diagnosis(diagnosis), SurveyWords.Cure(diagnosis) }.Where(sentence => sentence.Length > 0)
        : [];

    private static string[] Recorded(string file)
    {
        using StreamReader reader = new(typeof(AdviceTextsTests).Assembly.GetManifestResourceStream(file)!);
        return reader.ReadToEnd().TrimEnd('\n').Split('\n');
    }
}
