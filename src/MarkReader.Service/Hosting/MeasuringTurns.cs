using System.Threading.RateLimiting;

namespace MarkReader.Service.Hosting;

/// <summary>Lets as many measurements run at once as the machine has cores, and a few wait their turn; the rest are sent away.</summary>
public sealed class MeasuringTurns : IDisposable
{
    private readonly ConcurrencyLimiter _limiter;

    public MeasuringTurns(int atOnce, int waiting)
    {
        (AtOnce, Waiting) = (atOnce, waiting);
        _limiter = new(new() { PermitLimit = atOnce, QueueLimit = waiting, QueueProcessingOrder = QueueProcessingOrder.OldestFirst });
    }

    /// <summary>How long a client that was sent away is asked to wait.</summary>
    public static TimeSpan RetryAfter { get; } = TimeSpan.FromSeconds(2);

    /// <summary>Measurements that run at once.</summary>
    public int AtOnce { get; }

    /// <summary>Requests that may wait.</summary>
    public int Waiting { get; }

    /// <summary>A turn, to be disposed of when done; null when too many are waiting already.</summary>
    public async Task<IDisposable?> TakeTurnAsync(CancellationToken cancellation)
    {
        RateLimitLease lease = await _limiter.AcquireAsync(1, cancellation);
        if (lease.IsAcquired)
            return lease;
        lease.Dispose();
        return null;
    }

    public void Dispose() => _limiter.Dispose();
}
