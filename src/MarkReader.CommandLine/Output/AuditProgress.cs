using System.Diagnostics;

namespace MarkReader.CommandLine.Output;

/// <summary>Tells on standard error how far a long audit is: a line for ten photos, none in the first second.</summary>
internal sealed class AuditProgress(TextWriter error)
{
    private const int Step = 10;

    private static readonly TimeSpan s_silence = TimeSpan.FromSeconds(1);

    private readonly Stopwatch _watch = Stopwatch.StartNew();

    public void Tell(int done, int all)
    {
        if (done % Step == 0 && done < all && _watch.Elapsed > s_silence)
            error.WriteLine($"{done} of {all} photos measured");
    }
}
