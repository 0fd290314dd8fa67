using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Storage;

public sealed class PhotoStoreTests : IDisposable
{
    private static readonly Failure s_noCard = new(new("CARD_NOT_FOUND", FailureKind.NotMeasurable), "No card was found", "move closer");
    private readonly TemporaryFolder _temporary = new();
    private readonly Database _database;
    private readonly PhotoStore _photos;

    public PhotoStoreTests()
    {
        _database = _temporary.Open();
        _photos = TemporaryFolder.Photos(_database);
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_photo_comes_back_byte_for_byte_after_a_restart()
    {
        byte[] bytes = SomePhotos.Jpeg(1, 200_000);
        PhotoReceipt receipt = _photos.Keep(bytes).ValueOrThrow();
        _database.Release();

        Original original = TemporaryFolder.Photos(_temporary.Open()).Read(receipt.Photo.Id).ValueOrThrow();

        Assert.Equal(bytes, original.Bytes);
        Assert.Equal(receipt.Photo, original.Photo);
    }

    [Fact]
    public void The_id_is_the_digest_that_other_programs_compute()
    {
        // SHA-256 of ff d8 ff, by coreutils: printf '\xff\xd8\xff' | sha256sum
        KeptPhoto photo = _photos.Keep((byte[])[0xFF, 0xD8, 0xFF]).ValueOrThrow().Photo;
        Assert.Equal("6e568e1f67fba258184c78181539e5e8fdee447e49bb706fc0ea34fbf12336a5", photo.Id);
        Assert.Equal(OriginalFormat.Jpeg, photo.Format);
    }

    [Fact]
    public void The_same_bytes_are_kept_once()
    {
        byte[] bytes = SomePhotos.Jpeg(2);
        PhotoReceipt first = _photos.Keep(bytes).ValueOrThrow();
        PhotoReceipt second = _photos.Keep(bytes).ValueOrThrow();

        Assert.True(first.IsNew);
        Assert.False(second.IsNew);
        Assert.Equal(first.Photo, second.Photo);
        Assert.Single(FilesKept());
        Assert.Single(_photos.List(null, 10).ValueOrThrow().Items);
    }

    [Fact]
    public async Task The_same_bytes_sent_many_times_at_once_are_kept_once()
    {
        byte[] bytes = SomePhotos.Jpeg(3, 100_000);
        PhotoReceipt[] receipts = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => _photos.Keep(bytes).ValueOrThrow())));
        Assert.Equal(1, receipts.Count(receipt => receipt.IsNew));
        Assert.Single(FilesKept());
    }

    [Theory]
    [InlineData("")]
    [InlineData("GIF89a")]
    [InlineData("<html><script>alert(1)</script>")]
    [InlineData("....ftypheic....")]
    public void What_is_no_photo_is_refused_and_not_kept(string text)
    {
        Assert.False(_photos.Keep(System.Text.Encoding.ASCII.GetBytes(text)).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.NotAPhoto, failure.Code);
        Assert.Empty(FilesKept());
    }

    [Fact]
    public void An_original_that_was_changed_or_removed_is_refused_and_can_be_sent_again()
    {
        byte[] bytes = SomePhotos.Jpeg(4);
        string id = _photos.Keep(bytes).ValueOrThrow().Photo.Id;
        string file = Assert.Single(FilesKept());

        File.WriteAllBytes(file, SomePhotos.Jpeg(5));
        Assert.False(_photos.Read(id).TryGet(out _, out Failure? changed));
        Assert.Equal(StorageFailures.OriginalDamaged, changed.Code);

        File.Delete(file);
        Assert.False(_photos.Read(id).TryGet(out _, out Failure? gone));
        Assert.Equal(StorageFailures.OriginalDamaged, gone.Code);

        _photos.Keep(bytes).ValueOrThrow();
        Assert.Equal(bytes, _photos.Read(id).ValueOrThrow().Bytes);
    }

    [Fact]
    public void A_refusal_is_kept_with_its_photo_and_comes_back_whole()
    {
        string id = _photos.Keep(SomePhotos.Jpeg(6)).ValueOrThrow().Photo.Id;
        _photos.KeepMeasurement(id, "1.0", new KeptAnswer.Refusal(s_noCard)).ValueOrThrow();
        KeptMeasurement found = _photos.FindMeasurement(id).ValueOrThrow();
        Assert.Equal(new KeptAnswer.Refusal(s_noCard), found.Answer);
        Assert.Equal("1.0", found.ProgramVersion);
    }

    [Fact]
    public void The_latest_answer_is_the_one_that_comes_back()
    {
        string id = _photos.Keep(SomePhotos.Jpeg(7)).ValueOrThrow().Photo.Id;
        _photos.KeepMeasurement(id, "1.0", new KeptAnswer.Refusal(s_noCard)).ValueOrThrow();
        _photos.KeepMeasurement(id, "1.0", new KeptAnswer.Report("""{"marks":[]}""")).ValueOrThrow();
        Assert.Equal(new KeptAnswer.Report("""{"marks":[]}"""), _photos.FindMeasurement(id).ValueOrThrow().Answer);
        _photos.KeepMeasurement(id, "1.1", new KeptAnswer.Report("""{"marks":[1]}""")).ValueOrThrow();
        Assert.Equal("1.1", _photos.FindMeasurement(id).ValueOrThrow().ProgramVersion);
    }

    [Fact]
    public void A_measurement_of_a_photo_that_is_not_kept_is_refused()
    {
        Assert.False(_photos.KeepMeasurement(new('0', 64), "1.0", new KeptAnswer.Report("{}")).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.NotKept, failure.Code);
    }

    [Fact]
    public void Pages_together_give_every_photo_once_and_the_newest_first()
    {
        List<string> sent = [.. Enumerable.Range(10, 7).Select(seed => _photos.Keep(SomePhotos.Jpeg(seed)).ValueOrThrow().Photo.Id)];
        List<KeptPhoto> listed = [];
        string? after = null;
        do
        {
            Page<KeptPhoto> page = _photos.List(after, 3).ValueOrThrow();
            Assert.InRange(page.Items.Count, 1, 3);
            listed.AddRange(page.Items);
            after = page.Next;
        }
        while (after is not null);
        Assert.Equal(sent.Count, listed.Count);
        Assert.Equal(sent.Order(), listed.Select(photo => photo.Id).Order());
        Assert.Equal(listed.OrderByDescending(photo => photo.ReceivedAt).Select(photo => photo.ReceivedAt), listed.Select(photo => photo.ReceivedAt));
    }

    [Fact]
    public void Deleting_takes_the_file_and_what_was_measured_with_it()
    {
        string id = _photos.Keep(SomePhotos.Jpeg(20)).ValueOrThrow().Photo.Id;
        _photos.KeepMeasurement(id, "1.0", new KeptAnswer.Report("{}")).ValueOrThrow();

        _photos.Delete(id).ValueOrThrow();

        Assert.Empty(FilesKept());
        Assert.False(_photos.Find(id).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.NotKept, failure.Code);
        Assert.False(_photos.FindMeasurement(id).TryGet(out _, out _));
        Assert.False(_photos.Delete(id).TryGet(out _, out _));
    }

    [Fact]
    public void A_start_removes_what_was_left_half_written_and_nothing_else()
    {
        _photos.Keep(SomePhotos.Jpeg(21)).ValueOrThrow();
        string whole = Assert.Single(FilesKept());
        string old = whole + ".old.part";
        string fresh = whole + ".fresh.part";
        File.WriteAllText(old, "half");
        File.SetLastWriteTimeUtc(old, DateTime.UtcNow.AddHours(-2));
        File.WriteAllText(fresh, "half");

        _ = TemporaryFolder.Photos(_database);

        Assert.Equal([whole, fresh], FilesKept().Order());
    }

    private List<string> FilesKept() => [.. Directory.EnumerateFiles(_temporary.Folder.Photos, "*", SearchOption.AllDirectories)];
}
