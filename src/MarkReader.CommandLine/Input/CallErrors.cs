using System.CommandLine;
using System.CommandLine.Parsing;
using MarkReader.CommandLine.Commands;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>The parser's findings in the words and codes of this program.</summary>
internal static class CallErrors
{
    /// <summary>The first thing that is wrong with the call, or null.</summary>
    public static Failure? Of(ParseResult call)
    {
        Command command = call.CommandResult.Command;
        string help = CommandTexts.Say("callErrors.seeHelp", command.Name);
        if (!command.Parents.Any() && call.Errors.Count > 0)
        {
            string names = string.Join(", ", command.Subcommands.Select(c => c.Name));
            return call.UnmatchedTokens is [string word, ..]
                ? new(CommandLineFailures.CommandUnknown, CommandTexts.Word("callErrors.thereNoCommand", word), CommandTexts.Word("callErrors.useOneOrHelp", names))
                : new(CommandLineFailures.CommandMissing, CommandTexts.Get("callErrors.noCommandGiven"), CommandTexts.Word("callErrors.useOneOrHelp", names));
        }

        if ((Misspelt(call) ?? (call.UnmatchedTokens is [string extra, ..] ? extra : null)) is { } unknown)
            return new(CommandLineFailures.ArgumentUnknown, CommandTexts.Word("callErrors.notKnownCommand", unknown, command.Name), help);
        return call.Errors.Count == 0 ? null : Of(call.Errors[0], help);
    }

    // The parser takes an unknown option for an argument; numbers below zero are none. After "--" everything is an argument.
    private static string? Misspelt(ParseResult call) => call.Tokens.Any(t => t.Type == TokenType.DoubleDash)
        ? null
        : call.Tokens.FirstOrDefault(t => t.Type == TokenType.Argument && t.Value is ['-', '-', _, ..] or ['-', (>= 'a' and <= 'z') or (>= 'A' and <= 'Z')])?.Value;

    private static Failure Of(ParseError error, string help) => error.SymbolResult switch
    {
        OptionResult { IdentifierTokenCount: > 1 } option => new(CommandLineFailures.OptionRepeated, CommandTexts.Word("callErrors.givenMoreThanOnce", option.Option.Name), CommandTexts.Get("callErrors.giveOnce")),
        OptionResult { IdentifierTokenCount: > 0, Tokens.Count: 0 } option => new(CommandLineFailures.OptionWithoutValue, CommandTexts.Word("callErrors.hasNoValue", option.Option.Name), help),
        OptionResult { Tokens.Count: > 1 } option => new(CommandLineFailures.OptionRepeated, CommandTexts.Word("callErrors.hasMoreThanOneValue", option.Option.Name), CommandTexts.Get("callErrors.giveOnce")),
        OptionResult option => new(CommandLineFailures.OptionMissing, CommandTexts.Word("callErrors.missing", option.Option.Name), help),
        ArgumentResult { Parent: OptionResult option } => new(CommandLineFailures.OptionWithoutValue, CommandTexts.Word("callErrors.hasNoValue", option.Option.Name), help),
        ArgumentResult argument => new(CommandLineFailures.ArgumentMissing, CommandTexts.Word("callErrors.missing2", argument.Argument.Name), help),
        CommandResult command when Missing(command) is { } option => new(CommandLineFailures.OptionMissing, CommandTexts.Word("callErrors.missing", option.Name), help),
        CommandResult command when command.Command.Arguments.FirstOrDefault(a => command.GetResult(a) is null or { Tokens.Count: 0 }) is { } argument =>
            new(CommandLineFailures.ArgumentMissing, CommandTexts.Word("callErrors.missing2", argument.Name), help),
        _ => new(CommandLineFailures.CallWrong, error.Message.TrimEnd('.'), help),
    };

    private static Option? Missing(CommandResult command) =>
        command.Command.Options.FirstOrDefault(o => o.Required && command.GetResult(o) is null or { IdentifierTokenCount: 0 });
}
