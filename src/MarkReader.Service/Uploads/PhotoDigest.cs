using System.Security.Cryptography;

namespace MarkReader.Service.Uploads;

/// <summary>SHA-256 of a photo that was sent, in hexadecimal digits.</summary>
internal static class PhotoDigest
{
    public static string Of(IFormFile photo)
    {
        using Stream stream = photo.OpenReadStream();
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
