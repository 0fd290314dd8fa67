using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>Refusals of what is kept, from StorageTexts.resx.</summary>
internal sealed class StorageTexts : Texts<StorageTexts>;
