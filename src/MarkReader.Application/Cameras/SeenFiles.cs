using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>Tells photos that come twice: the same bytes say nothing new, and would count as two.</summary>
internal sealed class SeenFiles
{
    private readonly Dictionary<string, string> _names = [];

    /// <summary>The refusal of a photo whose bytes came before; null for a new one.</summary>
    public Failure? Repeated(BoardPhotoFile file)
    {
        string digest = PhotoFiles.Digest(file.Bytes.Span);
        if (_names.TryGetValue(digest, out string? first))
            return new(CameraFailures.PhotoTwice, CameraTexts.Word("seenFiles.twice", first), CameraTexts.Get("seenFiles.twiceHint"));
        _names.Add(digest, file.Name);
        return null;
    }
}
