using System.Text;
using MarkReader.Application.Interim;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Interim;

public sealed class InterimCheckTests
{
    private static readonly string s_digest = new('a', 64);

    // With u = 0.01 mm on both axes the region that holds 95 % has the radius 0.01 · √5.99 = 0.0245 mm.
    [Theory]
    [InlineData(0, InterimVerdict.Same)]
    [InlineData(0.024, InterimVerdict.Within)]
    [InlineData(0.025, InterimVerdict.Beyond)]
    [InlineData(0.6, InterimVerdict.OtherMarks)]
    public void A_mark_that_leaves_its_stated_region_is_flagged(double shift, InterimVerdict expected)
    {
        InterimCheck check = InterimCheck.Of(Record(Photo("a.jpg", Mark(1, 2), Mark(-3, 0))), Record(Photo("a.jpg", Mark(-3, 0), Mark(1, 2 + shift))));

        InterimComparison photo = Assert.Single(check.Photos);
        Assert.Equal(expected, photo.Verdict);
        Assert.Equal(expected is InterimVerdict.Beyond or InterimVerdict.OtherMarks ? 1 : 0, check.Flagged);
    }

    [Fact]
    public void Photos_that_are_other_gone_or_new_and_refusals_that_come_or_go_are_flagged()
    {
        InterimRecord before = Record(Photo("changed.jpg", Mark(1, 1)), Photo("gone.jpg", Mark(1, 1)), Photo("refused.jpg", Mark(1, 1)), Photo("still.jpg") with { Refusal = "NO_CARD" });
        InterimRecord now = Record(
            Photo("changed.jpg", Mark(1, 1)) with { Digest = new('b', 64) }, Photo("new.jpg", Mark(1, 1)), Photo("refused.jpg") with { Refusal = "NO_CARD" }, Photo("still.jpg") with { Refusal = "NO_CARD" });

        Assert.Equal(
            [InterimVerdict.PhotoChanged, InterimVerdict.Gone, InterimVerdict.NotKept, InterimVerdict.OtherMarks, InterimVerdict.Same],
            InterimCheck.Of(before, now).Photos.Select(p => p.Verdict));
    }

    [Fact]
    public void What_was_kept_is_read_back_to_the_last_digit()
    {
        InterimRecord record = Record(Photo("a.jpg", new MeasuredPoint(new(1.0 / 3, -2.0 / 7), new(1e-5 / 3, 1e-6 / 7, 2e-5 / 3))), Photo("b.png") with { Refusal = "NO_CARD" });
        InterimRecord read = InterimFile.Read(Encoding.UTF8.GetBytes(InterimFile.Write(record))).ValueOrThrow();

        Assert.Equal((record.Program, record.Made), (read.Program, read.Made));
        Assert.All(InterimCheck.Of(record, read).Photos, p => Assert.Equal(InterimVerdict.Same, p.Verdict));
        Assert.Equal(record.Photos[0].Marks[0], read.Photos[0].Marks[0]);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("[1, 2]")]
    [InlineData("""{"program": "1", "made": "2026-11-26T10:00:00Z", "photos": [null]}""")]
    [InlineData("""{"program": "1", "made": "2026-11-26T10:00:00Z", "photos": [{"name": "a", "sha256": "x", "marks": []}]}""")]
    [InlineData("""{"program": "1", "made": "soon", "photos": [{"name": "a", "sha256": "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "marks": []}]}""")]
    [InlineData("""{"program": "1", "made": "2026-11-26T10:00:00Z", "photos": [{"name": "a", "sha256": "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "marks": [{"u": 1, "v": 1, "covariance": [[1, 2], [2, 1]]}]}]}""")]
    public void A_file_that_is_no_record_is_refused(string text)
    {
        Assert.False(InterimFile.Read(Encoding.UTF8.GetBytes(text)).TryGet(out _, out Failure? failure));
        Assert.Equal(InterimFailures.RecordUnreadable, failure.Code);
    }

    private static InterimRecord Record(params InterimPhoto[] photos) => new("1.0", new(2026, 11, 26, 10, 0, 0, TimeSpan.Zero), photos);

    private static InterimPhoto Photo(string name, params MeasuredPoint[] marks) => new(name, s_digest, marks, null);

    private static MeasuredPoint Mark(double u, double v) => new(new(u, v), Covariance2.Isotropic(0.01));
}
