using System.CommandLine;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>Reads the numbers of a call, keeping the first that is wrong.</summary>
internal sealed class Numbers(ParseResult call)
{
    public Failure? Wrong { get; private set; }

    /// <summary>The option's number, or its default when it is not given.</summary>
    public double Read(Option<string> option, double fallback = double.NaN)
    {
        if (call.GetValue(option) is not { } text)
            return fallback;
        if (NumberText.Read(text).TryGet(out Number? number, out Failure? failure))
            return number.Value;
        Wrong ??= failure with { Message = $"{option.Name}: {failure.Message}" };
        return double.NaN;
    }
}
