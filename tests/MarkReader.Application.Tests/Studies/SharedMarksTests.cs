using MarkReader.Application.Studies;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Studies;

/// <summary>Which marks all photos of a study show, and which photo is to blame where they do not.</summary>
public sealed class SharedMarksTests
{
    private static readonly (double U, double V)[] s_target = [(-6, 2.5), (0.5, -5), (5.5, 4)];

    [Fact]
    public void A_photo_of_another_target_is_named_with_what_to_do()
    {
        Failure failure = Refusal(Photo("anna/1.jpg", s_target), Photo("anna/2.jpg", s_target), Photo("berta/1.jpg", (-2, 5), (4, -1), (-5, -6), (3, 3)), Photo("berta/2.jpg", s_target));
        Assert.Equal((StudyInputFailures.MarksDiffer, "'berta/1.jpg' shows other marks than 3 photos that agree with each other"), (failure.Code, failure.Message));
        Assert.StartsWith("put another photo of the same target", failure.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_is_common_the_photo_that_misses_most_is_named()
    {
        Failure failure = Refusal(Photo("anna/1.jpg", s_target), Photo("anna/2.jpg", s_target), Photo("berta/1.jpg", s_target[0]), Photo("berta/2.jpg", s_target));
        Assert.Equal("marks that are seen at the same place in all 4 photos: 1 of 3; 'berta/1.jpg' misses 2 of them", failure.Message);
    }

    [Fact]
    public void A_mark_that_is_left_out_is_told_with_the_photos_that_miss_it_or_alone_have_it()
    {
        StudyReadings readings = StudyReadings.Of([Photo("anna/1.jpg", s_target), Photo("anna/2.jpg", [.. s_target, (2, 7)]), Photo("berta/1.jpg", s_target[..2]), Photo("berta/2.jpg", s_target)]).ValueOrThrow();
        Assert.Equal("Left out, since not every photo shows it: the mark at u 5.5, v 4.0 mm (missing in 'berta/1.jpg') and the mark at u 2.0, v 7.0 mm (only in 'anna/2.jpg').", Assert.Single(readings.Notes).ToString());
        Assert.Equal(8, readings.All.Count);
    }

    private static Failure Refusal(params StudyPhoto[] photos)
    {
        Assert.False(StudyReadings.Of(photos).TryGet(out _, out Failure? failure));
        return failure;
    }

    // No two photos read a mark at quite the same place.
    private static StudyPhoto Photo(string name, params (double U, double V)[] marks)
    {
        double shift = 0.01 * (name.Length + name[^5]) % 0.04;
        Covariance2 own = Covariance2.Isotropic(0.01);
        return new(name.Split('/')[0], name, $"'{name}'", [.. marks.Select(m => new StudyMark(new(new(m.U + shift, m.V), own), own, own))]);
    }
}
