using System.Diagnostics.CodeAnalysis;

namespace MarkReader.Quantities;

/// <summary>Either a value or a failure. Expected failure is a value, not an exception.</summary>
public sealed class Outcome<T>
    where T : class
{
    private readonly T? _value;
    private readonly Failure? _failure;

    private Outcome(T? value, Failure? failure) => (_value, _failure) = (value, failure);

    /// <summary>True and the value, or false and the failure.</summary>
    public bool TryGet([NotNullWhen(true)] out T? value, [NotNullWhen(false)] out Failure? failure)
    {
        (value, failure) = (_value, _failure);
        return _value is not null;
    }

    /// <summary>The value; for tests and tools, where a failure is a fault.</summary>
    /// <exception cref="InvalidOperationException">The outcome is a failure.</exception>
    public T ValueOrThrow() => _value ?? throw new InvalidOperationException(_failure!.ToString());

    public static implicit operator Outcome<T>(T value) => new(value ?? throw new ArgumentNullException(nameof(value)), null);

    public static implicit operator Outcome<T>(Failure failure) => new(null, failure ?? throw new ArgumentNullException(nameof(failure)));
}
