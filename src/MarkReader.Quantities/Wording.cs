using System.Globalization;
using System.Runtime.CompilerServices;

namespace MarkReader.Quantities;

/// <summary>A sentence that knows which of its words are lengths, so that a reader who has chosen inches gets inches. As text it is in mm, with a decimal point.</summary>
/// <remarks>Written as an interpolated string: a <see cref="SaidLength"/> is a length, <see cref="Unit"/> the name of the unit alone; everything else is text.</remarks>
[InterpolatedStringHandler]
public sealed class Wording : IEquatable<Wording>
{
    private readonly List<Part> _parts = [];

    public Wording(int literalLength, int formattedCount) => _parts.Capacity = formattedCount + (literalLength > 0 ? 1 : 0);

    private Wording(string text) => AppendLiteral(text);

    /// <summary>Whether a length is marked as such in it.</summary>
    public bool HasLengths => _parts.Any(p => p.Length is not null);

    /// <summary>The name of the unit, as in "give the height in mm".</summary>
    public static SaidUnit Unit => default;

    public static implicit operator Wording(string text) => FromString(text);

    public static Wording FromString(string text) => new(text);

    public void AppendLiteral(string value) => _parts.Add(new(value, null, false));

    public void AppendFormatted(SaidLength value) => _parts.Add(new("", value, false));

    public void AppendFormatted(SaidUnit value) => _parts.Add(new("", null, true));

    public void AppendFormatted(SaidEvent value) => _parts.Add(new(value.ToString(), null, false) { Event = value.Number });

    public void AppendFormatted(Wording value)
    {
        ArgumentNullException.ThrowIfNull(value);
        _parts.AddRange(value._parts);
    }

    public void AppendFormatted<T>(T value, string? format = null) =>
        _parts.Add(value is IFormattable formattable ? new(formattable.ToString(format, CultureInfo.InvariantCulture), null, false) { IsNumber = true } : new(value?.ToString() ?? "", null, false));

    /// <summary>The sentence of a template.</summary>
    /// <param name="template">{0}, {1:0.#} … stand for the parts.</param>
    /// <param name="parts">Lengths as <see cref="SaidLength"/>.</param>
    public static Wording Of(string template, params ReadOnlySpan<object?> parts)
    {
        Wording wording = new(0, 0);
        string[] pieces = template.Split('{');
        wording.AppendLiteral(pieces[0]);
        foreach (string piece in pieces.Skip(1))
        {
            int end = piece.IndexOf('}', StringComparison.Ordinal);
            string[] hole = piece[..end].Split(':', 2);
            object? part = parts[int.Parse(hole[0], CultureInfo.InvariantCulture)];
            if (part is SaidLength length)
                wording.AppendFormatted(length);
            else if (part is SaidUnit unit)
                wording.AppendFormatted(unit);
            else if (part is SaidEvent happened)
                wording.AppendFormatted(happened);
            else if (part is Wording words)
                wording.AppendFormatted(words);
            else
                wording.AppendFormatted(part, hole.ElementAtOrDefault(1));
            wording.AppendLiteral(piece[(end + 1)..]);
        }

        return wording;
    }

    /// <summary>The sentence with its events called by other words.</summary>
    public Wording Name(Func<int, Wording> events)
    {
        Wording named = new(0, 0);
        foreach (Part part in _parts)
            named._parts.AddRange(part.Event is { } number ? events(number)._parts : [part]);
        return named;
    }

    /// <summary>The sentence in another unit.</summary>
    /// <param name="length">A length as text, with its unit when it asks for it.</param>
    /// <param name="unit">The unit's name.</param>
    /// <param name="number">Writes the text of a number that is no length, which has a decimal point; null: as it is.</param>
    /// <param name="between">What keeps two lengths apart where the sentence has a comma: a semicolon when decimals follow a comma.</param>
    public string In(Func<SaidLength, string> length, string unit, char between = ',', Func<string, string>? number = null)
    {
        bool BetweenLengths(int i) => i > 0 && _parts[i - 1].Length is not null && _parts.ElementAtOrDefault(i + 1).Length is not null && _parts[i].Text?.StartsWith(',') == true;
        return string.Concat(_parts.Select((p, i) => p.IsUnit ? unit : p.Length is { } l ? length(l) : BetweenLengths(i) ? between + p.Text[1..] : p.IsNumber && number is not null ? number(p.Text) : p.Text));
    }

    public override string ToString() => In(l => l.ToString(), "mm");

    public bool Equals(Wording? other) => other is not null && ToString() == other.ToString();

    public override bool Equals(object? obj) => Equals(obj as Wording);

    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    private readonly record struct Part(string Text, SaidLength? Length, bool IsUnit)
    {
        public int? Event { get; init; }

        public bool IsNumber { get; init; }
    }
}

/// <summary>A length in a sentence.</summary>
/// <param name="Millimetres">May be anything that was typed, also what is no length.</param>
/// <param name="Format">Of the millimetres: 0.### or 0.00 for example.</param>
/// <param name="HasUnit">Whether the unit stands behind it.</param>
public readonly record struct SaidLength(double Millimetres, string Format = "0.###", bool HasUnit = true)
{
    /// <summary>In mm, with a decimal point.</summary>
    public override string ToString() => Millimetres.ToString(Format, CultureInfo.InvariantCulture) + (HasUnit ? " mm" : "");
}

/// <summary>An event in a sentence, by its place in the list, from 1: "event 8" where nobody knows what it was.</summary>
public readonly record struct SaidEvent(int Number)
{
    public override string ToString() => WordingTexts.Say("event", Number);
}

/// <summary>Stands for the name of the unit of length in a sentence.</summary>
public readonly record struct SaidUnit
{
    public override string ToString() => "mm";
}
