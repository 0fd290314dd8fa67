using System.CommandLine;
using MarkReader.CommandLine.Output;

namespace MarkReader.CommandLine.Commands;

internal static class Calls
{
    /// <summary>The streams of this call.</summary>
    public static Terminal Terminal(this ParseResult call, Option<bool>? json = null) =>
        new(call.InvocationConfiguration.Output, call.InvocationConfiguration.Error, json is not null && call.GetValue(json));
}
