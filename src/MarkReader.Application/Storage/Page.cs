namespace MarkReader.Application.Storage;

/// <summary>One page of a list, newest first.</summary>
/// <param name="Items">At most as many as were asked for.</param>
/// <param name="Next">Where the next page starts, or null when this is the last.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, string? Next)
{
    /// <summary>The most items that one page holds.</summary>
    public const int Limit = 100;
}
