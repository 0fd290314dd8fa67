using System.Collections.Concurrent;

namespace MarkReader.Service.Hosting;

/// <summary>How far requests are that measure many photos, told by their keys; as many as there are <see cref="MeasuringTurns"/>.</summary>
internal sealed class MeasuringProgress
{
    private readonly ConcurrentDictionary<string, MeasuringState> _states = new();

    public MeasuringState Of(string key) => _states.GetValueOrDefault(key) ?? new(0, 0);

    public void Tell(string key, int done, int total) => _states[key] = new(done, total);

    public void End(string key) => _states.TryRemove(key, out _);
}

/// <summary>How far a request is.</summary>
/// <param name="Done">Photos that are measured.</param>
/// <param name="Total">Photos that it has; 0 before its turn, after its end, and for a key that is not known.</param>
internal sealed record MeasuringState(int Done, int Total);
