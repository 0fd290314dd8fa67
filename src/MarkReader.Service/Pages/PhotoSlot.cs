using MarkReader.Quantities;

namespace MarkReader.Service.Pages;

/// <summary>A place for one photo on the form.</summary>
/// <param name="Name">Name of its field.</param>
/// <param name="Title">Heading.</param>
/// <param name="Words">What the photo should show.</param>
/// <param name="Sign">"near", "far" or "both": the sign beside the heading.</param>
/// <param name="KeptId">Id of the photo already kept for it, or null.</param>
/// <param name="Wrong">What is wrong with it, or null.</param>
public sealed record PhotoSlot(string Name, string Title, string Words, string Sign, string? KeptId, Failure? Wrong)
{
    /// <summary>The marks that can be named in this photo.</summary>
    public IReadOnlyList<NamedMark> Marks { get; init; } = [];
}

/// <summary>A mark whose place in a photo the user may name.</summary>
/// <param name="Field">Name of its field.</param>
/// <param name="Which">near or far.</param>
/// <param name="Text">The place as entered, "x,y" in px, or null.</param>
/// <param name="Wrong">What is wrong with it, or null.</param>
public sealed record NamedMark(string Field, string Which, string? Text, Failure? Wrong);
