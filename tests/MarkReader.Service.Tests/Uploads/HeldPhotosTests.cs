using MarkReader.Application.Storage;
using MarkReader.Service.Tests.Support;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Http;

namespace MarkReader.Service.Tests.Uploads;

/// <summary>Photos of refused forms are held whole, for a while, up to so many bytes, and by nothing but their token.</summary>
public sealed class HeldPhotosTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("markreader-held-").FullName;
    private readonly SetClock _clock = new();
    private readonly HeldPhotos _held;

    public HeldPhotosTests() => _held = new(new DataFolder(_root).Create().ValueOrThrow(), _clock) { MostTogether = 20 };

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        _held.Dispose();
        Directory.Delete(_root, recursive: true);
    }

    [Fact]
    public async Task Photos_are_held_byte_for_byte_until_half_an_hour_after_they_were_last_asked_for()
    {
        HeldSet set = (await _held.HoldAsync([Photo("a.jpg", 1, 2, 3), Photo("../b\u0007.jpg", 4, 5)], "Anna", Cancellation))!;
        Assert.Equal(["a.jpg", "b.jpg"], set.Photos.Select(p => p.Name));
        for (int i = 0; i < 3; i++)
        {
            _clock.Now += TimeSpan.FromMinutes(29);
            Assert.Equal((set, "Anna"), (_held.Find(set.Token), set.Person));
        }

        await using FileStream bytes = _held.Open(set)!;
        _clock.Now += TimeSpan.FromMinutes(30);
        Assert.Null(_held.Find(set.Token));
        Assert.Null(_held.Open(set));
        Assert.Empty(Directory.GetFiles(_root, "held-*", SearchOption.AllDirectories));
        // Who reads them already goes on.
        byte[] second = new byte[set.Photos[1].Length];
        bytes.Position = set.Photos[1].Offset;
        bytes.ReadExactly(second);
        Assert.Equal([4, 5], second);
    }

    [Fact]
    public async Task Those_asked_for_longest_ago_go_when_all_together_are_too_large()
    {
        List<HeldSet> sets = [];
        for (int i = 0; i < 3; i++)
        {
            sets.Add((await _held.HoldAsync([Photo("x.jpg", new byte[8])], "", Cancellation))!);
            _clock.Now += TimeSpan.FromMinutes(1);
            _held.Find(sets[0].Token);
        }

        Assert.Equal([true, false, true], sets.Select(s => _held.Find(s.Token) is not null));
        Assert.Null(await _held.HoldAsync([], "", Cancellation));
        Assert.Null(await _held.HoldAsync([.. Enumerable.Repeat(Photo("x.jpg", 1), HeldPhotos.MostPhotos + 1)], "", Cancellation));
        Assert.Equal(2, Directory.GetFiles(_root, "held-*", SearchOption.AllDirectories).Length);
        _held.Dispose();
        Assert.Empty(Directory.GetFiles(_root, "held-*", SearchOption.AllDirectories));
    }

    private static FormFile Photo(string name, params byte[] bytes) => new(new MemoryStream(bytes), 0, bytes.Length, "photos", name);
}
