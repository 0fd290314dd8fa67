using MarkReader.Application.Cameras;
using MarkReader.Application.Inputs;

namespace MarkReader.Service.Uploads;

/// <summary>A photo of a form with its bytes.</summary>
internal static class SentPhoto
{
    public static BoardPhotoFile Read(IFormFile file)
    {
        byte[] bytes = new byte[file.Length];
        using Stream stream = file.OpenReadStream();
        stream.ReadExactly(bytes);
        return new(FileLabel.Shown(file.FileName), bytes);
    }
}
