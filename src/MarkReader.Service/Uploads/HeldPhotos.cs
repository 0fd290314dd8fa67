using System.Security.Cryptography;
using MarkReader.Application.Inputs;
using MarkReader.Application.Storage;

namespace MarkReader.Service.Uploads;

/// <summary>Photos that came with a form that was refused, held for a while so that nobody has to choose them again. They lie in files beside the data, not in memory.</summary>
/// <remarks>A set is not let go when its form is accepted: a form may be sent twice.</remarks>
internal sealed class HeldPhotos : IDisposable
{
    /// <summary>How many photos a set has at most; a form names each in a field.</summary>
    public const int MostPhotos = 40;

    /// <summary>Bytes of a set at most.</summary>
    public const long MostBytes = 2L * UploadForm.RequestLimit;

    private static readonly TimeSpan s_tidying = TimeSpan.FromMinutes(1);

    private readonly DataFolder _folder;
    private readonly TimeProvider _clock;
    private readonly ITimer _timer;
    private readonly Lock _gate = new();
    private readonly List<Kept> _kept = [];

    public HeldPhotos(DataFolder folder, TimeProvider clock)
    {
        (_folder, _clock) = (folder, clock);
        _timer = clock.CreateTimer(_ => Tidy(), null, s_tidying, s_tidying);
    }

    /// <summary>Bytes of all sets together at most: those that were asked for longest ago go first.</summary>
    public long MostTogether { get; init; } = 5L * UploadForm.RequestLimit;

    /// <summary>How long they are held after they were last asked for.</summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromMinutes(30);

    /// <summary>Holds photos. Null when there are none, when they are too many, or when the disk does not take them.</summary>
    public async Task<HeldSet?> HoldAsync(IReadOnlyList<IFormFile> photos, string person, CancellationToken cancellation)
    {
        if (photos.Count is 0 or > MostPhotos || photos.Sum(p => p.Length) > MostBytes)
            return null;
        string token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        // Where what a killed program leaves is cleared away.
        string path = Path.Combine(_folder.Photos, $"held-{Guid.NewGuid():N}.part");
        try
        {
            List<HeldPhoto> held = [];
            await using (FileStream file = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                foreach (IFormFile photo in photos)
                {
                    await using Stream bytes = photo.OpenReadStream();
                    held.Add(new(FileLabel.Shown(photo.FileName), file.Position, photo.Length));
                    await bytes.CopyToAsync(file, cancellation);
                }
            }

            HeldSet set = new(token, person, held);
            Add(new(set, path, held.Sum(p => p.Length)));
            return set;
        }
        catch (IOException)
        {
            File.Delete(path);
            return null;
        }
        catch (OperationCanceledException)
        {
            File.Delete(path);
            throw;
        }
    }

    /// <summary>The set that a form names; null when it is not held, or no longer.</summary>
    public HeldSet? Find(string? token)
    {
        lock (_gate)
        {
            Tidy();
            if (_kept.Find(k => k.Set.Token == token) is not { } kept)
                return null;
            kept.Until = Later();
            return kept.Set;
        }
    }

    /// <summary>The bytes of a set, to be disposed of; null when it is not held, or no longer.</summary>
    public FileStream? Open(HeldSet set)
    {
        lock (_gate)
        {
            // Whoever reads holds the file: it may go meanwhile.
            return _kept.Find(k => k.Set.Token == set.Token) is { } kept && File.Exists(kept.Path) ? new(kept.Path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete) : null;
        }
    }

    public void Dispose()
    {
        _timer.Dispose();
        lock (_gate)
        {
            while (_kept.Count > 0)
                Let(_kept[0]);
        }
    }

    private DateTimeOffset Later() => _clock.GetUtcNow() + Longest;

    private void Add(Kept added)
    {
        lock (_gate)
        {
            Tidy();
            while (_kept.Count > 0 && _kept.Sum(k => k.Length) + added.Length > MostTogether)
                Let(_kept.MinBy(k => k.Until)!);
            added.Until = Later();
            _kept.Add(added);
        }
    }

    private void Tidy()
    {
        lock (_gate)
        {
            foreach (Kept old in _kept.Where(k => k.Until <= _clock.GetUtcNow()).ToArray())
                Let(old);
        }
    }

    private void Let(Kept kept)
    {
        _kept.Remove(kept);
        File.Delete(kept.Path);
    }

    private sealed record Kept(HeldSet Set, string Path, long Length)
    {
        public DateTimeOffset Until { get; set; }
    }
}
