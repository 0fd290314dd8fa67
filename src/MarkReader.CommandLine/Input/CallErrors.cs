using System.CommandLine;
using System.CommandLine.Parsing;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>The parser's findings in the words and codes of this program.</summary>
internal static class CallErrors
{
    /// <summary>The first thing that is wrong with the call, or null.</summary>
    public static Failure? Of(ParseResult call)
    {
        Command command = call.CommandResult.Command;
        string help = $"see '{command.Name} --help'";
        if (command is RootCommand && call.Errors.Count > 0)
        {
            string names = string.Join(", ", command.Subcommands.Select(c => c.Name));
            return call.UnmatchedTokens is [string word, ..]
                ? new(CommandLineFailures.CommandUnknown, $"there is no command '{word}'", $"use one of {names}, or --help")
                : new(CommandLineFailures.CommandMissing, "no command is given", $"use one of {names}, or --help");
        }

        if ((Misspelt(call) ?? (call.UnmatchedTokens is [string extra, ..] ? extra : null)) is { } unknown)
            return new(CommandLineFailures.ArgumentUnknown, $"'{unknown}' is not known to the command '{command.Name}'", help);
        return call.Errors.Count == 0 ? null : Of(call.Errors[0], help);
    }

    // The parser takes an unknown option for an argument; numbers below zero are none. After "--" everything is an argument.
    private static string? Misspelt(ParseResult call) => call.Tokens.Any(t => t.Type == TokenType.DoubleDash)
        ? null
        : call.Tokens.FirstOrDefault(t => t.Type == TokenType.Argument && t.Value is ['-', '-', _, ..] or ['-', (>= 'a' and <= 'z') or (>= 'A' and <= 'Z')])?.Value;

    private static Failure Of(ParseError error, string help) => error.SymbolResult switch
    {
        OptionResult { IdentifierTokenCount: > 1 } option => new(CommandLineFailures.OptionRepeated, $"{option.Option.Name} is given more than once", "give it once"),
        OptionResult { IdentifierTokenCount: > 0, Tokens.Count: 0 } option => new(CommandLineFailures.OptionWithoutValue, $"{option.Option.Name} has no value", help),
        OptionResult { Tokens.Count: > 1 } option => new(CommandLineFailures.OptionRepeated, $"{option.Option.Name} has more than one value", "give it once"),
        OptionResult option => new(CommandLineFailures.OptionMissing, $"{option.Option.Name} is missing", help),
        ArgumentResult { Parent: OptionResult option } => new(CommandLineFailures.OptionWithoutValue, $"{option.Option.Name} has no value", help),
        ArgumentResult argument => new(CommandLineFailures.ArgumentMissing, $"the {argument.Argument.Name} is missing", help),
        CommandResult command when Missing(command) is { } option => new(CommandLineFailures.OptionMissing, $"{option.Name} is missing", help),
        CommandResult command when command.Command.Arguments.FirstOrDefault(a => command.GetResult(a) is null or { Tokens.Count: 0 }) is { } argument =>
            new(CommandLineFailures.ArgumentMissing, $"the {argument.Name} is missing", help),
        _ => new(CommandLineFailures.CallWrong, error.Message.TrimEnd('.'), help),
    };

    private static Option? Missing(CommandResult command) =>
        command.Command.Options.FirstOrDefault(o => o.Required && command.GetResult(o) is null or { IdentifierTokenCount: 0 });
}
