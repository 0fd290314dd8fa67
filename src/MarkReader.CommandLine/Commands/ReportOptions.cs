using System.CommandLine;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>A report as PDF.</summary>
/// <param name="what">What it is about.</param>
internal sealed class ReportOptions(string what)
{
    private readonly Option<string> _pdf = new("--pdf") { Description = what, HelpName = "FILE" };
    private readonly Option<string> _paper = new("--paper") { Description = CommandTexts.Get("reportOptions.itsPagesOrLetterDefault"), HelpName = "NAME" };

    public IReadOnlyList<Option> All => [_pdf, _paper];

    public Failure? Read(ParseResult call, out DocumentOutput? output) => DocumentOutput.Read(call.GetValue(_pdf), call.GetValue(_paper), out output);
}
