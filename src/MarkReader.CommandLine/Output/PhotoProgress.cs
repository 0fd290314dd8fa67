using System.Diagnostics;

namespace MarkReader.CommandLine.Output;

/// <summary>Tells on standard error how far a series of photos is: a line every few seconds, none in the first second.</summary>
internal sealed class PhotoProgress(TextWriter error)
{
    private static readonly TimeSpan s_silence = TimeSpan.FromSeconds(1), s_step = TimeSpan.FromSeconds(3);

    private readonly Stopwatch _watch = Stopwatch.StartNew();

    private TimeSpan _next = s_silence;

    private bool _told;

    public void Tell(int done, int all)
    {
        // What was quick says nothing; what was begun is ended with all.
        if (done == all ? !_told : _watch.Elapsed < _next)
            return;
        _told = true;
        error.WriteLine(OutputTexts.Say("photoProgress.photosMeasured", done, all));
        _next = _watch.Elapsed + s_step;
    }
}
