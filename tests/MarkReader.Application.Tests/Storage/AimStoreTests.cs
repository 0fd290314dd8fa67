using System.Globalization;
using MarkReader.Application.Aiming;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Tests.Storage;

public sealed class AimStoreTests : IDisposable
{
    private readonly TemporaryFolder _temporary = new();
    private readonly PhotoStore _photos;
    private readonly AimStore _aims;

    public AimStoreTests()
    {
        Database database = _temporary.Open();
        _photos = TemporaryFolder.Photos(database);
        _aims = new(database, _photos, TimeProvider.System);
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void An_aim_comes_back_after_a_restart_as_it_was_kept()
    {
        NewAim aim = Aim(1, 2, 480.25);
        KeptAim kept = _aims.Keep(aim).ValueOrThrow().Kept;

        Database again = _temporary.Open();
        KeptAim found = new AimStore(again, TemporaryFolder.Photos(again), TimeProvider.System).Find(kept.Id).ValueOrThrow();

        Assert.Equal(kept, found);
        Assert.Equal(aim, found.Aim);
    }

    [Fact]
    public void A_refusal_is_kept_with_its_photos_and_inputs()
    {
        Failure failure = new(new("MARK_NOT_FOUND", FailureKind.NotMeasurable), "No mark was found", "fire again");
        NewAim aim = Aim(1, 1, 480) with { Answer = new KeptAnswer.Refusal(failure), Overlay = null };
        aim = aim with { Inputs = aim.Inputs with { First = FirstMark.Upper } };
        Assert.Equal(aim, _aims.Find(_aims.Keep(aim).ValueOrThrow().Kept.Id).ValueOrThrow().Aim);
    }

    [Fact]
    public void Readings_of_print_and_tape_and_named_marks_are_kept_and_make_another_result()
    {
        NewAim plain = Aim(1, 2, 480);
        NewAim full = plain with
        {
            Inputs = plain.Inputs with { Card = new(40.25, 39.9, null, -0.5, 0.2), NearAt = new(1520.5, 980), FarAt = new(12, 13.25) },
        };
        KeptAim kept = _aims.Keep(full).ValueOrThrow().Kept;
        Assert.Equal(full, _aims.Find(kept.Id).ValueOrThrow().Aim);
        Assert.True(_aims.Keep(plain).ValueOrThrow().IsNew);
        Assert.False(_aims.Keep(full).ValueOrThrow().IsNew);
    }

    [Fact]
    public void Another_camera_profile_makes_another_result_and_the_earlier_one_stays()
    {
        NewAim plain = Aim(1, 2, 480);
        NewAim profiled = plain with { Inputs = plain.Inputs with { Cameras = "phone 2026-11-26" }, Answer = new KeptAnswer.Report("""{"ratio":2}""") };
        KeptAim kept = _aims.Keep(plain).ValueOrThrow().Kept;
        Assert.True(_aims.Keep(profiled).ValueOrThrow().IsNew);
        Assert.Equal(kept, _aims.Find(kept.Id).ValueOrThrow());
        Assert.False(_aims.Keep(profiled).ValueOrThrow().IsNew);
    }

    [Fact]
    public void Inputs_that_an_earlier_version_wrote_are_read()
    {
        KeptAim kept = _aims.Keep(Aim(1, 2, 480)).ValueOrThrow().Kept;
        Assert.Equal((null, null, null), (kept.Aim.Inputs.Card, kept.Aim.Inputs.NearAt, kept.Aim.Inputs.FarAt));
        using SqliteConnection connection = new($"Data Source={_temporary.Folder.DatabaseFile}");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT inputs FROM aims";
        Assert.DoesNotContain("card", (string)command.ExecuteScalar()!, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_same_inputs_under_the_same_version_are_kept_once_with_the_latest_answer()
    {
        NewAim aim = Aim(1, 2, 480);
        AimReceipt first = _aims.Keep(aim).ValueOrThrow();
        AimReceipt second = _aims.Keep(aim with { Answer = new KeptAnswer.Report("""{"ratio":2}""") }).ValueOrThrow();
        AimReceipt otherVersion = _aims.Keep(aim with { ProgramVersion = "1.1" }).ValueOrThrow();
        AimReceipt otherPath = _aims.Keep(Aim(1, 2, 481)).ValueOrThrow();

        Assert.True(first.IsNew);
        Assert.False(second.IsNew);
        Assert.Equal(first.Kept.Id, second.Kept.Id);
        Assert.Equal(new KeptAnswer.Report("""{"ratio":2}"""), second.Kept.Aim.Answer);
        Assert.True(otherVersion.IsNew);
        Assert.True(otherPath.IsNew);
        Assert.Equal(3, _aims.List(null, 10).ValueOrThrow().Items.Count);
    }

    [Fact]
    public void Pages_together_give_every_aim_once_and_the_newest_first()
    {
        List<long> kept = [.. Enumerable.Range(0, 5).Select(i => _aims.Keep(Aim(1, 2, 480 + i)).ValueOrThrow().Kept.Id)];
        List<long> listed = [];
        long? before = null;
        do
        {
            Page<KeptAim> page = _aims.List(before, 2).ValueOrThrow();
            listed.AddRange(page.Items.Select(aim => aim.Id));
            before = page.Next is null ? null : long.Parse(page.Next, CultureInfo.InvariantCulture);
        }
        while (before is not null);
        kept.Reverse();
        Assert.Equal(kept, listed);
    }

    [Fact]
    public void A_photo_to_which_an_aim_refers_is_not_deleted()
    {
        KeptAim kept = _aims.Keep(Aim(1, 2, 480)).ValueOrThrow().Kept;
        Assert.False(_photos.Delete(kept.Aim.Inputs.FarPhoto).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.PhotoInUse, failure.Code);
        Assert.NotEmpty(_photos.Read(kept.Aim.Inputs.FarPhoto).ValueOrThrow().Bytes);
    }

    [Fact]
    public void Deleting_an_aim_takes_the_photos_that_no_other_aim_needs()
    {
        KeptAim first = _aims.Keep(Aim(1, 2, 480)).ValueOrThrow().Kept;
        KeptAim second = _aims.Keep(Aim(2, 3, 480)).ValueOrThrow().Kept;

        _aims.Delete(first.Id).ValueOrThrow();

        Assert.False(_aims.Find(first.Id).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.NotKept, failure.Code);
        Assert.False(_photos.Find(first.Aim.Inputs.NearPhoto).TryGet(out _, out _));
        Assert.True(_photos.Find(second.Aim.Inputs.NearPhoto).TryGet(out _, out _));
        Assert.False(_aims.Delete(first.Id).TryGet(out _, out _));
    }

    [Fact]
    public void The_number_of_a_deleted_aim_is_not_given_to_another()
    {
        long first = _aims.Keep(Aim(1, 2, 480)).ValueOrThrow().Kept.Id;
        _aims.Delete(first).ValueOrThrow();
        Assert.NotEqual(first, _aims.Keep(Aim(1, 2, 490)).ValueOrThrow().Kept.Id);
    }

    private NewAim Aim(int near, int far, double farPath)
    {
        string nearId = _photos.Keep(SomePhotos.Jpeg(near)).ValueOrThrow().Photo.Id;
        string farId = _photos.Keep(SomePhotos.Jpeg(far)).ValueOrThrow().Photo.Id;
        return new(new(nearId, farId, null, new(80, farPath)), "1.0", new KeptAnswer.Report("""{"ratio":0.2}"""), new("<svg/>", "<svg id=\"crop\"/>"));
    }
}
