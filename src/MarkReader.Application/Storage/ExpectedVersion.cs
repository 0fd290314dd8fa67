namespace MarkReader.Application.Storage;

/// <summary>The versions that a change was made for. It is refused when what is kept has another one, because someone else has changed it.</summary>
public sealed record ExpectedVersion
{
    private readonly IReadOnlyList<long>? _versions;

    private ExpectedVersion(IReadOnlyList<long>? versions) => _versions = versions;

    /// <summary>Whatever is kept is to be changed.</summary>
    public static ExpectedVersion Any { get; } = new((IReadOnlyList<long>?)null);

    /// <summary>One of these; none when the list is empty.</summary>
    public static ExpectedVersion OneOf(params IReadOnlyList<long> versions) => new(versions);

    public bool Admits(long version) => _versions?.Contains(version) ?? true;
}
