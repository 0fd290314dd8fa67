using System.Globalization;

namespace MarkReader.Application.Storage;

/// <summary>One page of a list, newest first.</summary>
/// <param name="Items">At most as many as were asked for.</param>
/// <param name="Next">Where the next page starts, or null when this is the last.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, string? Next)
{
    /// <summary>The most items that one page holds.</summary>
    public const int Limit = 100;

    /// <summary>How many items a page holds when <paramref name="limit"/> are asked for.</summary>
    internal static int Size(int limit) => Math.Clamp(limit, 1, Limit);

    /// <summary>The page of <paramref name="size"/> items; one more than that was read when another page follows.</summary>
    internal static Page<T> Of(IReadOnlyList<T> read, int size, Func<T, long> id) =>
        new([.. read.Take(size)], read.Count > size ? id(read[size - 1]).ToString(CultureInfo.InvariantCulture) : null);
}
