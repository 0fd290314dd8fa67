using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Storage;
using MarkReader.Application.Tests.Support;
using MarkReader.Cameras.Profiles;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Cameras;

public sealed class CameraStoreTests : IDisposable
{
    private readonly TemporaryFolder _temporary = new();
    private readonly SetClock _clock = new();
    private readonly CameraStore _cameras;

    public CameraStoreTests() => _cameras = new(_temporary.Open(), _clock);

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_profile_is_kept_to_the_last_digit_and_handed_to_measurements_oldest_first()
    {
        KeptCamera first = _cameras.Add(SomeCamera.Named("first")).ValueOrThrow();
        _cameras.Add(SomeCamera.Later("second")).ValueOrThrow();

        Assert.Equal(CameraProfileFile.Write(SomeCamera.Named("first")), CameraProfileFile.Write(_cameras.Find(first.Id).ValueOrThrow().Profile));
        MeasureOptions how = _cameras.Known(new() { Taps = [new(1, 2)] }).ValueOrThrow();
        Assert.Equal(["first", "second"], how.KnownCameras.Select(c => c.Name));
        Assert.Equal([new PixelPoint(1, 2)], how.Taps);
    }

    [Fact]
    public void Of_one_lens_the_profile_made_last_is_used_whichever_came_in_last()
    {
        CameraProfile other = SomeCamera.Named("other lens");
        _cameras.Add(SomeCamera.Later("new")).ValueOrThrow();
        _cameras.Add(SomeCamera.Named("old, from a file")).ValueOrThrow();
        _cameras.Add(other with { Traits = other.Traits with { FocalLength = 9 } }).ValueOrThrow();
        _cameras.Add(other with { Name = "anonymous", Traits = other.Traits with { ModelDigest = null } }).ValueOrThrow();

        KeptCameras all = _cameras.All().ValueOrThrow();
        Assert.Equal(
            [("anonymous", CameraUse.Named), ("other lens", CameraUse.Automatic), ("old, from a file", CameraUse.Superseded), ("new", CameraUse.Automatic)],
            all.Cameras.Select(c => (c.Name, all.UseOf(c))));
        Assert.Equal("new", all.UsedFor(all.Cameras[2]).Name);
        Assert.Equal(["other lens", "new"], all.InUse.Select(c => c.Name));
        Assert.Equal(["anonymous", "old, from a file"], all.NotInUse.Select(c => c.Name));
        Assert.Equal(["old, from a file", "new"], _cameras.Known().ValueOrThrow().KnownCameras.Where(c => c.Traits.FocalLength != 9 && c.Traits.Tell).Select(c => c.Name));
    }

    [Fact]
    public void A_name_is_given_once_and_a_repeated_request_adds_nothing()
    {
        RequestKey key = RequestKey.Of("k", "one"u8).ValueOrThrow();
        KeptCamera first = _cameras.Add(SomeCamera.Named("a"), key).ValueOrThrow();
        Assert.Equal(first.Id, _cameras.Add(SomeCamera.Named("a"), key).ValueOrThrow().Id);
        Assert.Equal(StorageFailures.KeyReused, Refused(_cameras.Add(SomeCamera.Named("b"), RequestKey.Of("k", "two"u8).ValueOrThrow())));
        Assert.Equal(CameraFailures.NameTaken, Refused(_cameras.Add(SomeCamera.Later("a"))));
        Assert.Single(_cameras.All().ValueOrThrow().Cameras);
    }

    [Fact]
    public void A_copy_of_a_profile_is_the_one_that_is_kept_whatever_it_is_called()
    {
        KeptCamera first = _cameras.Add(SomeCamera.Named("a")).ValueOrThrow();
        CameraProfile copy = CameraProfileFile.Read(System.Text.Encoding.UTF8.GetBytes(CameraProfileFile.Write(first.Profile))).ValueOrThrow();

        KeptCamera again = _cameras.Add(copy with { Name = "b" }, RequestKey.Of("k", "copy"u8).ValueOrThrow()).ValueOrThrow();

        Assert.Equal((first.Id, "a", false, true), (again.Id, again.Name, first.WasThere, again.WasThere));
        Assert.Equal(CameraUse.Automatic, _cameras.All().ValueOrThrow().UseOf(Assert.Single(_cameras.All().ValueOrThrow().Cameras)));
    }

    [Fact]
    public void The_last_use_is_noted_and_a_camera_goes_only_at_its_version()
    {
        KeptCamera camera = _cameras.Add(SomeCamera.Named("a")).ValueOrThrow();
        Assert.Null(camera.LastUsedAt);
        _clock.Now = _clock.Now.AddDays(3);
        _cameras.Used(null, "a", "unknown");
        Assert.Equal(_clock.Now, _cameras.Find(camera.Id).ValueOrThrow().LastUsedAt);

        Assert.Equal(StorageFailures.Changed, Refused(_cameras.Remove(camera.Id, ExpectedVersion.OneOf(2))));
        _cameras.Remove(camera.Id, ExpectedVersion.OneOf(1)).ValueOrThrow();
        Assert.Equal(StorageFailures.NotKept, Refused(_cameras.Find(camera.Id)));
        Assert.Empty(_cameras.Known().ValueOrThrow().KnownCameras);
    }

    [Fact]
    public void A_profile_that_cannot_be_read_stops_no_measurement_and_can_be_deleted()
    {
        KeptCamera camera = _cameras.Add(SomeCamera.Named("a")).ValueOrThrow();
        _temporary.Execute("UPDATE cameras SET profile = '{}'");
        Assert.Empty(_cameras.Known().ValueOrThrow().KnownCameras);
        Assert.Equal(CameraFailures.Unreadable, Refused(_cameras.Find(camera.Id)));
        Assert.False(_cameras.Remove(camera.Id, ExpectedVersion.Any).TryGet(out _, out Failure? failure));
        Assert.Equal(CameraFailures.Unreadable, failure.Code);
        Assert.Equal(StorageFailures.NotKept, Refused(_cameras.Find(camera.Id)));
    }

    private static FailureCode Refused(Outcome<KeptCamera> outcome)
    {
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        return failure.Code;
    }
}
