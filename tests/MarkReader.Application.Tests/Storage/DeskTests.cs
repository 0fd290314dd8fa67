using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Storage;

/// <summary>Photos of the fixtures, taken in and measured, with what is kept of them.</summary>
public sealed class DeskTests : IDisposable
{
    private readonly TemporaryFolder _temporary = new();
    private readonly PhotoStore _photos;
    private readonly AimStore _store;
    private readonly PhotoDesk _desk;
    private readonly AimDesk _aims;

    public DeskTests()
    {
        Database database = _temporary.Open();
        _photos = TemporaryFolder.Photos(database);
        _store = new(database, _photos, TimeProvider.System);
        CameraStore cameras = new(database, TimeProvider.System);
        _desk = new(_photos, cameras);
        _aims = new(_photos, _store, cameras);
    }

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_photo_that_cannot_be_measured_is_kept_with_the_reason()
    {
        byte[] bytes = Fixture("no-card");
        string id = _desk.Keep(bytes).ValueOrThrow().Photo.Id;

        KeptMeasurement measured = _desk.Measure(id).ValueOrThrow();

        KeptAnswer.Refusal refusal = Assert.IsType<KeptAnswer.Refusal>(measured.Answer);
        Assert.Equal("NO_CARD", refusal.Failure.Code.Name);
        Assert.Equal(measured, _photos.FindMeasurement(id).ValueOrThrow());
        Assert.Equal(bytes, _photos.Read(id).ValueOrThrow().Bytes);
    }

    [Fact]
    public void What_is_no_photo_is_refused_and_not_kept()
    {
        Assert.False(_desk.Keep("no photo at all"u8.ToArray()).TryGet(out _, out Failure? failure));
        Assert.Equal("PHOTO_FORMAT", failure.Code.Name);
        Assert.Empty(_photos.List(null, 10).ValueOrThrow().Items);
    }

    [Fact]
    public void An_aim_is_kept_with_its_overlays()
    {
        AimReceipt receipt = _aims.Find(Inputs("leg1-first-near", "leg1-first-far", 480)).ValueOrThrow();
        Assert.True(receipt.IsNew);
        Assert.IsType<KeptAnswer.Report>(receipt.Kept.Aim.Answer);
        KeptOverlay overlay = receipt.Kept.Aim.Overlay!;
        Assert.Contains("data-part=\"aim\"", overlay.Photo, StringComparison.Ordinal);
        Assert.Contains("data-part=\"aim\"", overlay.Crop, StringComparison.Ordinal);
        Assert.Equal(receipt.Kept, _store.Find(receipt.Kept.Id).ValueOrThrow());
    }

    [Fact]
    public void A_refused_photo_is_a_kept_aim_and_a_wrong_number_is_not()
    {
        AimReceipt refused = _aims.Find(Inputs("leg1-first-near", "no-card", 480)).ValueOrThrow();
        Assert.Equal("NO_CARD", Assert.IsType<KeptAnswer.Refusal>(refused.Kept.Aim.Answer).Failure.Code.Name);

        Assert.False(_aims.Find(Inputs("leg1-first-near", "leg1-first-far", 80)).TryGet(out _, out Failure? failure));
        Assert.Equal("PATHS_EQUAL", failure.Code.Name);
        Assert.Single(_store.List(null, 10).ValueOrThrow().Items);
    }

    private AimInputs Inputs(string near, string far, double farPath) => new(
        _desk.Keep(Fixture(near)).ValueOrThrow().Photo.Id, _desk.Keep(Fixture(far)).ValueOrThrow().Photo.Id, null, new(80, farPath));

    private static byte[] Fixture(string name) => File.ReadAllBytes(Path.Combine(Repository.Fixtures, name + ".jpg"));
}
