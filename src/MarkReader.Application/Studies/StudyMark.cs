using MarkReader.Imaging.Marks;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>What a study takes from a mark of a photo.</summary>
/// <param name="At">Its centre, with everything known.</param>
/// <param name="Own">That part of the covariance which differs from mark to mark also in one photo.</param>
/// <param name="View">That part which differs from photo to photo.</param>
public sealed record StudyMark(MeasuredPoint At, Covariance2 Own, Covariance2 View)
{
    // The print, the tape's height and what is flat are the same for all photos of a card.
    private static readonly UncertaintySource[] s_own = [UncertaintySource.Noise, UncertaintySource.MarkShape, UncertaintySource.Interpolation];

    public static StudyMark Of(Mark mark) => new(mark.Centre, Sum(mark, s_own.Contains), Sum(mark, source => source == UncertaintySource.CardView));

    private static Covariance2 Sum(Mark mark, Func<UncertaintySource, bool> counts) =>
        mark.Budget.Where(c => counts(c.Source)).Select(c => c.Covariance).Aggregate(Covariance2.Isotropic(0), (a, b) => a + b);
}

/// <summary>The marks of one photo of a study.</summary>
/// <param name="Person">Who took it, or with which phone; empty for pulses.</param>
/// <param name="Name">What tells it from the others.</param>
/// <param name="Called">What messages call it, so that whoever has the file finds it.</param>
public sealed record StudyPhoto(string Person, string Name, string Called, IReadOnlyList<StudyMark> Marks);
