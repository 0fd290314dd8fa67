using MarkReader.Quantities;

namespace MarkReader.Service.Pages.Machines;

/// <summary>A field as a partial shows it.</summary>
/// <param name="Name">Its name and id.</param>
/// <param name="Label">What it is.</param>
/// <param name="Text">What stands in it.</param>
/// <param name="Unit">Behind it: mm, in or °; empty for none.</param>
/// <param name="Usual">What is taken when it is left blank, or null.</param>
/// <param name="Wrong">What is wrong with it, or null.</param>
/// <param name="Now">What is kept now, when that differs after someone else's change; else null.</param>
internal sealed record FieldView(string Name, string Label, string Text, string Unit, string? Usual, Failure? Wrong, string? Now)
{
    /// <summary>A line below it, or null.</summary>
    public string? Hint { get; init; }

    /// <summary>Choices by value and words, where it is one of several.</summary>
    public IReadOnlyList<(string Value, string Words)> Choices { get; init; } = [];

    /// <summary>The field for a value of its own beside the choices, or null.</summary>
    public FieldView? Own { get; init; }

    /// <summary>Ids of what describes it.</summary>
    public string Described => Name + "-error" + (Hint is null ? "" : $" {Name}-hint") + (Now is null ? "" : $" {Name}-now");
}

/// <summary>What the leg's partials need.</summary>
internal sealed record LegView(EditModel Page, string Number)
{
    public string Key => "leg" + Number;
}
