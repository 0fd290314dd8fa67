using MarkReader.Application.Reports;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Output;

/// <summary>The two streams of the program.</summary>
/// <param name="Json">Whether standard output is JSON.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool Json)
{
    /// <summary>One line on standard error; with --json also the error on standard output. Returns the exit status.</summary>
    public int Refuse(Failure failure) => Refuse(failure, ExitStatus.Of(failure));

    public int Refuse(Failure failure, int status)
    {
        Failure told = OptionHints.Of(failure), oneLine = told with { Message = OneLine(told.Message), Hint = OneLine(told.Hint) };
        Error.WriteLine($"error: {oneLine}");
        if (Json)
            Out.WriteLine(ReportJson.Write(ErrorReport.From(oneLine)));
        return status;
    }

    // File names and other people's words may hold line breaks.
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
}
