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

    /// <summary>The option's number, or null when it is not given.</summary>
    public double? ReadOptional(Option<string> option) => call.GetValue(option) is null ? null : Read(option);

    /// <summary>The place in a photo that the option names, or null when it is not given.</summary>
    public PixelPoint? ReadPlace(Option<string> option) => call.GetValue(option) is { } text ? Place(option.Name, text) : null;

    /// <summary>All places in a photo that a repeatable option names.</summary>
    public IReadOnlyList<PixelPoint> ReadPlaces(Option<string[]> option) => [.. (call.GetValue(option) ?? []).Select(text => Place(option.Name, text))];

    /// <summary>What the option's text holds, or null when it is not given or wrong.</summary>
    public T? ReadOptional<T>(Option<string> option, Func<string, Outcome<T>> read)
        where T : class
    {
        if (call.GetValue(option) is not { } text)
            return null;
        if (read(text).TryGet(out T? value, out Failure? failure))
            return value;
        Wrong ??= failure with { Message = $"{option.Name}: {failure.Message}" };
        return null;
    }

    /// <summary>What all texts of a repeatable option hold; those that are wrong are left out.</summary>
    public IReadOnlyList<T> ReadAll<T>(Option<string[]> option, Func<string, Outcome<T>> read)
        where T : class
    {
        List<T> values = [];
        foreach (string text in call.GetValue(option) ?? [])
        {
            if (read(text).TryGet(out T? value, out Failure? failure))
                values.Add(value);
            else
                Wrong ??= failure with { Message = $"{option.Name}: {failure.Message}" };
        }

        return values;
    }

    private PixelPoint Place(string option, string text)
    {
        if (PlaceText.Read(text).TryGet(out Place? place, out Failure? failure))
            return place.Photo;
        Wrong ??= failure with { Message = $"{option}: {failure.Message}" };
        return default;
    }
}
