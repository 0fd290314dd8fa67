using System.CommandLine;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>A report as PDF.</summary>
internal sealed class ReportOptions
{
    private readonly Option<string> _pdf = new("--pdf") { Description = "Write a report with pictures: .pdf", HelpName = "FILE" };
    private readonly Option<string> _paper = new("--paper") { Description = "Its pages: a4 or letter (default a4)", HelpName = "NAME" };

    public IReadOnlyList<Option> All => [_pdf, _paper];

    public Failure? Read(ParseResult call, out DocumentOutput? output) => DocumentOutput.Read(call.GetValue(_pdf), call.GetValue(_paper), out output);
}
