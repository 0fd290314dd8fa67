using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Storage;
using MarkReader.Cameras.Boards;
using MarkReader.Quantities;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Application.Tests.Cameras;

/// <summary>A calibration whose photos come one by one.</summary>
public sealed class CalibrationDeskTests : IDisposable
{
    private static readonly DateTimeOffset s_made = new(2026, 1, 5, 9, 0, 0, TimeSpan.Zero);

    private readonly TemporaryFolder _temporary = new();
    private readonly CalibrationStore _calibrations;
    private readonly CameraStore _cameras;
    private readonly CalibrationDesk _desk;

    public CalibrationDeskTests()
    {
        Database database = _temporary.Open();
        _calibrations = new(database, TimeProvider.System);
        _cameras = new(database, TimeProvider.System);
        _desk = new(_calibrations, TimeProvider.System);
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void Photos_that_come_one_by_one_give_the_camera_that_they_give_at_once()
    {
        Random random = new(6);
        CameraSpec camera = BoardScene.Camera(random, 800);
        SceneSpec[] views = [.. BoardScene.Views(camera, random, 6)];
        byte[][] photos = [.. views.Select(v => Scene.Render(v).Photo)];
        byte[] cropped = Scene.Render(views[0] with { Camera = camera with { Height = 560 } }).Photo;
        long id = _calibrations.Begin().ValueOrThrow().Entry.Id;

        // The first of all is the one that does not fit the others.
        Assert.Null(Standing(_desk.Add(id, cropped, "cropped.jpg")).Photos[0].NotUsed);
        foreach ((byte[] photo, int i) in photos.Select((p, i) => (p, i)))
        {
            Outcome<BoardPhotoReceipt> added = _desk.Add(id, photo, $"C:\\a\\{i}\u0007.jpg");
            Assert.True(added.ValueOrThrow().IsNew);
            if (i == 0)
                Assert.Equal("the photo is 800 x 600 px, as many others are 800 x 560 px", Standing(added).Photos[1].NotUsed!.Message);
        }

        BoardPhotoReceipt again = _desk.Add(id, photos[3], "again.jpg").ValueOrThrow();

        Assert.Equal((5, false, 7), (again.Number, again.IsNew, again.Calibration.Photos.Count));
        CalibrationStanding standing = CalibrationStanding.Of(_calibrations.Find(id).ValueOrThrow());
        Assert.Equal("CAMERA_SIZES_DIFFER", standing.Photos[0].NotUsed!.Code.Name);
        Assert.Equal((6, true, true), (standing.Used, standing.CanFinish, standing.Tell));
        Assert.Contains(ViewNeed.More, standing.Missing);
        Assert.DoesNotContain(ViewNeed.Straight, standing.Missing);
        Assert.InRange(standing.Photos[1].Place!.Tilt.Degrees, 0, 10);

        KeptCamera kept = _desk.Finish(id, "bench", ExpectedVersion.OneOf(8)).ValueOrThrow();
        BoardPhotoFile[] files = [new("photo 1", cropped), .. photos.Select((p, i) => new BoardPhotoFile($"photo {i + 2}", p)), new("again", photos[3])];
        CameraFinding once = CalibrateCamera.Run("bench", s_made, files.Length, files).ValueOrThrow();
        Assert.Equal([("again", "PHOTO_TWICE"), ("photo 1", "CAMERA_SIZES_DIFFER")], once.Refused.Select(r => (r.Name, r.Failure.Code.Name)));
        Assert.Equal(once.Profile.Camera, kept.Profile.Camera);
        Assert.Equal(once.Profile.StandardUncertainties, kept.Profile.StandardUncertainties);
        Assert.Equal("photo 1", Assert.Single(kept.Report!.Refused).Name);
        Assert.Equal(kept.Id, _calibrations.Find(id).ValueOrThrow().Entry.CameraId);

        // Made again without one photo, it is the same camera with another profile.
        Assert.False(_desk.Finish(id, "bench", ExpectedVersion.OneOf(8)).TryGet(out _, out Failure? stale));
        Assert.Equal(StorageFailures.Changed, stale.Code);
        _calibrations.RemovePhoto(id, 7, ExpectedVersion.Any).ValueOrThrow();
        KeptCamera second = _desk.Finish(id, "bench", ExpectedVersion.Any).ValueOrThrow();
        Assert.Equal((kept.Id, 2, 5), (second.Id, second.Version, second.Profile.Views));

        _calibrations.Remove(id, ExpectedVersion.Any).ValueOrThrow();
        Assert.Equal(second.Profile.Camera, Assert.Single(_cameras.All().ValueOrThrow().Cameras).Profile.Camera);
    }

    [Fact]
    public void What_is_no_photo_is_not_kept_and_what_shows_no_board_is_kept_with_the_reason()
    {
        long id = _calibrations.Begin().ValueOrThrow().Entry.Id;
        Assert.False(_desk.Add(id, "no photo"u8.ToArray(), "x").TryGet(out _, out Failure? failure));
        Assert.Equal("PHOTO_FORMAT", failure.Code.Name);
        byte[] card = Scene.Render(new("card", 3) { Camera = new(900, 700, 800), Pose = new(11) }).Photo;

        CalibrationStanding standing = Standing(_desk.Add(id, card, "card.jpg"));

        Assert.Equal("NO_BOARD", Assert.Single(standing.Photos).NotUsed!.Code.Name);
        Assert.Equal(Enum.GetValues<ViewNeed>(), standing.Missing);
        Assert.False(_desk.Finish(id, "bench", ExpectedVersion.Any).TryGet(out _, out failure));
        Assert.Equal("CAMERA_FEW_VIEWS", failure.Code.Name);
        Assert.Empty(_cameras.All().ValueOrThrow().Cameras);
    }

    [Fact]
    public void An_empty_calibration_is_opened_again_instead_of_making_another()
    {
        long first = Reopened();
        Assert.Equal(first, Reopened());
        _desk.Add(first, Scene.Render(new("card", 3) { Camera = new(500, 400, 450), Pose = new(5) }).Photo, "card.jpg").ValueOrThrow();
        long second = Reopened();
        Assert.NotEqual(first, second);
        Assert.Equal(second, Reopened());
        // Who asks for a new one by its own key gets one.
        Assert.NotEqual(second, _calibrations.Begin().ValueOrThrow().Entry.Id);

        long Reopened() => _calibrations.Begin(RequestKey.Of(Guid.NewGuid().ToString("N"), []).ValueOrThrow(), reopen: true).ValueOrThrow().Entry.Id;
    }

    [Fact]
    public void A_calibration_takes_no_more_photos_than_it_may_have()
    {
        long id = _calibrations.Begin().ValueOrThrow().Entry.Id;
        _temporary.Execute($$"""
            WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {{CalibrationStore.MostPhotos}})
            INSERT INTO calibration_photos SELECT {{id}}, i, printf('%064d', i), 'x', '2026-01-05T09:00:00.000Z', NULL, '{"code":"NO_BOARD","kind":"NotMeasurable","message":"m","hint":"h"}' FROM n
            """);
        Assert.False(_desk.Add(id, Scene.Render(new("card", 3) { Camera = new(500, 400, 450), Pose = new(5) }).Photo, "x").TryGet(out _, out Failure? failure));
        Assert.Equal(CameraFailures.TooManyPhotos, failure.Code);
    }

    private static CalibrationStanding Standing(Outcome<BoardPhotoReceipt> receipt) => CalibrationStanding.Of(receipt.ValueOrThrow().Calibration);
}
