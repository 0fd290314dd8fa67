using System.Net;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>Counts wrong keys by the minute for each address, so that nobody can try many.</summary>
/// <remarks>Memory is bounded: when <see cref="MostAddresses"/> are counted, further ones share one count.</remarks>
public sealed class WrongKeys(TimeProvider time)
{
    /// <summary>Wrong keys of one address within <see cref="Window"/>; none is looked at after them.</summary>
    public const int Most = 20;

    public const int MostAddresses = 1024;

    private readonly Lock _lock = new();
    private readonly Dictionary<IPAddress, (DateTimeOffset Since, int Count)> _counts = [];

    public static TimeSpan Window { get; } = TimeSpan.FromMinutes(1);

    public bool IsOut(IPAddress address)
    {
        lock (_lock)
            return _counts.TryGetValue(Slot(address), out (DateTimeOffset Since, int Count) kept) && IsNow(kept.Since) && kept.Count >= Most;
    }

    public void Add(IPAddress address)
    {
        lock (_lock)
        {
            IPAddress slot = Slot(address);
            bool known = _counts.TryGetValue(slot, out (DateTimeOffset Since, int Count) kept) && IsNow(kept.Since);
            _counts[slot] = known ? (kept.Since, kept.Count + 1) : (time.GetUtcNow(), 1);
        }
    }

    private IPAddress Slot(IPAddress address)
    {
        if (_counts.ContainsKey(address) || _counts.Count < MostAddresses)
            return address;
        foreach (IPAddress old in _counts.Where(entry => !IsNow(entry.Value.Since)).Select(entry => entry.Key).ToArray())
            _counts.Remove(old);
        return _counts.Count < MostAddresses ? address : IPAddress.None;
    }

    private bool IsNow(DateTimeOffset since) => time.GetUtcNow() - since < Window;
}
