namespace MarkReader.Quantities;

/// <summary>Something that the user should know although there is a result: a stable code in lower camel case and a sentence that says what to do.</summary>
public sealed record Warning(string Code, string Message);
