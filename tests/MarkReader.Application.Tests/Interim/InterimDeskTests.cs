using System.Globalization;
using System.Reflection;
using MarkReader.Application.Cameras;
using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Interim;

/// <summary>Photos of the fixtures kept as a set and measured again. What an earlier version would have measured is written into the database.</summary>
public sealed class InterimDeskTests : IDisposable
{
    private static readonly string s_fixtures = Path.Combine(
        typeof(InterimDeskTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(item => item.Key == "RepositoryRoot").Value!, "fixtures", "photos");

    private readonly TemporaryFolder _temporary = new();
    private readonly PhotoStore _photos;
    private readonly InterimStore _sets;
    private readonly InterimDesk _desk;

    public InterimDeskTests()
    {
        Database database = _temporary.Open();
        _photos = TemporaryFolder.Photos(database);
        _sets = new(database);
        _desk = new(_sets, _photos, TimeProvider.System);
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_set_is_kept_with_its_photos_and_the_version_that_kept_it_measures_them_to_the_last_digit()
    {
        List<(int, int)> told = [];
        KeptInterimSet kept = _desk.Keep("shop wall", 3, [Fixture("grey.jpg"), Fixture("no-card.jpg"), Fixture("grey.jpg")], null, (done, all) => told.Add((done, all))).ValueOrThrow();

        Assert.Equal([(1, 3), (2, 3), (3, 3)], told);
        Assert.Equal(["grey.jpg", "no-card.jpg"], kept.Reference.Photos.Select(p => p.Name));
        Assert.Equal(("NO_CARD", InterimState.Kept), (kept.Reference.Photos[1].Refusal, kept.StateFor(ProgramVersion.Current)));
        Assert.NotEmpty(kept.Reference.Photos[0].Marks);

        KeptInterimSet measured = _desk.MeasureAgain(kept.Id).ValueOrThrow();
        Assert.Equal((InterimState.AsBefore, 0.0), (measured.StateFor(ProgramVersion.Current), Checked(measured).Largest));
        Assert.Single(_desk.MeasureAgain(kept.Id).ValueOrThrow().Checks);
        Assert.Equal(StorageFailures.PhotoInUse, Refused(_photos.Delete(kept.Reference.Photos[0].Digest)));

        _desk.Remove(kept.Id).ValueOrThrow();
        Assert.Empty(_photos.List(null, 10).ValueOrThrow().Items);
        Assert.Equal(StorageFailures.NotKept, Refused(_desk.MeasureAgain(kept.Id)));
    }

    // The factor of the distance to the border of the stated region: what an earlier version read lies just inside or just outside.
    [Theory]
    [InlineData(0.9, InterimState.AsBefore, InterimVerdict.Within)]
    [InlineData(1.1, InterimState.Differs, InterimVerdict.Beyond)]
    public void After_an_update_a_check_is_due_and_a_mark_that_moved_beyond_its_uncertainty_is_flagged(double factor, InterimState state, InterimVerdict verdict)
    {
        KeptInterimSet kept = _desk.Keep("update", 2, [Fixture("grey.jpg"), Fixture("blue-tape.jpg")], null).ValueOrThrow();
        Assert.Equal(0, _sets.Due(ProgramVersion.Current));
        InterimPhoto grey = kept.Reference.Photos.Single(p => p.Name == "grey.jpg");
        MeasuredPoint mark = grey.Marks[0];
        // Along u the border of the region is at √(5.991/(C⁻¹)uu).
        double border = Math.Sqrt(Covariance2.ChiSquare95 / mark.Covariance.MahalanobisSquared(new CardVector(1, 0)));
        int index = kept.Reference.Photos.ToList().IndexOf(grey);
        _temporary.Execute(string.Create(
            CultureInfo.InvariantCulture,
            $"UPDATE interim_sets SET record = json_set(record, '$.program', '0.9.0', '$.photos[{index}].marks[0].u', {mark.Point.U - (factor * border):R})"));

        Assert.Equal((InterimState.Due, 1), (_sets.Find(kept.Id).ValueOrThrow().StateFor(ProgramVersion.Current), _sets.Due(ProgramVersion.Current)));
        KeptInterimSet measured = _desk.MeasureAgain(kept.Id).ValueOrThrow();

        Assert.Equal((state, 0), (measured.StateFor(ProgramVersion.Current), _sets.Due(ProgramVersion.Current)));
        InterimComparison photo = Checked(measured).Photos.Single(p => p.Name == "grey.jpg");
        Assert.Equal(verdict, photo.Verdict);
        Assert.Equal(factor * border, photo.Marks[0].Moved.U, 1e-9);
        Assert.Equal(border, photo.Marks[0].Allowed, 1e-9);
        Assert.Equal(InterimVerdict.Same, Checked(measured).Photos.Single(p => p.Name == "blue-tape.jpg").Verdict);
        Assert.Equal(("0.9.0", ProgramVersion.Current), (Checked(measured).Before.Program, Checked(measured).Now.Program));

        KeptInterimSet anew = _desk.KeepAnew(kept.Id, Key("anew")).ValueOrThrow();
        Assert.Equal(InterimState.Kept, anew.StateFor(ProgramVersion.Current));
        Assert.Equal(anew.Id, _desk.KeepAnew(kept.Id, Key("anew")).ValueOrThrow().Id);
        _desk.Remove(kept.Id).ValueOrThrow();
        Assert.Equal(InterimState.AsBefore, _desk.MeasureAgain(anew.Id).ValueOrThrow().StateFor(ProgramVersion.Current));
    }

    [Fact]
    public void A_photo_whose_file_is_gone_leaves_the_outcome_open()
    {
        KeptInterimSet kept = _desk.Keep("gone", 2, [Fixture("grey.jpg"), Fixture("blue-tape.jpg")], null).ValueOrThrow();
        Assert.Equal(InterimFailures.NotMeasured, Refused(_desk.KeepAnew(kept.Id, null)));
        string digest = kept.Reference.Photos[0].Digest;
        File.Delete(Path.Combine(_temporary.Folder.Photos, digest[..2], digest + ".jpg"));

        KeptInterimSet measured = _desk.MeasureAgain(kept.Id).ValueOrThrow();
        Assert.Equal(InterimState.CannotTell, measured.StateFor(ProgramVersion.Current));
        Assert.Equal([InterimVerdict.Gone, InterimVerdict.Same], Checked(measured).Photos.Select(p => p.Verdict));
        Assert.Equal("Cannot tell: 1 of 2 photos are gone or were changed; the others are as before", InterimWords.Outcome(Checked(measured)).ToString());
    }

    [Fact]
    public void Of_a_set_that_is_refused_nothing_stays_and_a_repeated_request_keeps_one()
    {
        Assert.Equal(InterimFailures.NameInvalid, Refused(_desk.Keep("", 1, [Fixture("grey.jpg")], null)));
        Assert.Equal(InterimFailures.TooManyPhotos, Refused(_desk.Keep("many", InterimDesk.MostPhotos + 1, [], null)));
        Assert.Equal(InterimFailures.NoMarks, Refused(_desk.Keep("none", 1, [Fixture("no-mark.jpg")], null)));
        Assert.Equal("PHOTO_FORMAT", Refused(_desk.Keep("text", 2, [Fixture("grey.jpg"), new("note.txt", "no photo at all"u8.ToArray())], null)).Name);
        Assert.Empty(_photos.List(null, 10).ValueOrThrow().Items);

        // A phone may give all photos one name.
        BoardPhotoFile grey = Fixture("grey.jpg") with { Name = "image.jpg" }, blue = Fixture("blue-tape.jpg") with { Name = "image.jpg" };
        KeptInterimSet kept = _desk.Keep("phone", 2, [grey, blue], Key("one")).ValueOrThrow();
        Assert.Equal(["image.jpg", "image.jpg (2)"], kept.Reference.Photos.Select(p => p.Name));
        Assert.Equal(kept.Id, _desk.Keep("phone", 2, [grey, blue], Key("one")).ValueOrThrow().Id);
        Assert.Equal(StorageFailures.KeyReused, Refused(_desk.Keep("other", 1, [grey], Key("one") with { Digest = new('b', 64) })));

        _temporary.Execute($"WITH RECURSIVE n(i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < {InterimStore.Most}) INSERT INTO interim_sets (name, record) SELECT 'more', record FROM interim_sets, n");
        Assert.Equal(InterimFailures.TooManySets, Refused(_desk.Keep("full", 1, [grey], null)));
    }

    private static InterimCheck Checked(KeptInterimSet set) => set.CheckOf(ProgramVersion.Current)!;

    private static RequestKey Key(string key) => new(key, new string('a', 64));

    private static FailureCode Refused<T>(Outcome<T> outcome)
        where T : class => outcome.TryGet(out _, out Failure? failure) ? throw new InvalidOperationException("Nothing was refused.") : failure.Code;

    private static BoardPhotoFile Fixture(string name) => new(name, File.ReadAllBytes(Path.Combine(s_fixtures, name)));
}
