namespace MarkReader.Imaging.Pipeline;

/// <summary>How a photo is measured.</summary>
/// <param name="DebugDirectory">A folder that every stage writes its picture to; null for none.</param>
public sealed record MeasureOptions(string? DebugDirectory = null);
