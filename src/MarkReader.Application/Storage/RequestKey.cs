using System.Security.Cryptography;
using MarkReader.Quantities;

namespace MarkReader.Application.Storage;

/// <summary>What tells a repeated request from a new one.</summary>
/// <param name="Key">Chosen by the client: 1 to 100 visible ASCII signs.</param>
/// <param name="Digest">SHA-256 of the bytes that it sent, in hexadecimal digits.</param>
public sealed record RequestKey(string Key, string Digest)
{
    /// <summary>Longest key.</summary>
    public const int Longest = 100;

    /// <summary>The key of a request that must have one.</summary>
    /// <param name="bytes">What it sent.</param>
    public static Outcome<RequestKey> Of(string? key, ReadOnlySpan<byte> bytes) =>
        string.IsNullOrEmpty(key) || key.Length > Longest || !key.All(c => c is > ' ' and <= '~')
            ? new Failure(StorageFailures.KeyInvalid, StorageTexts.Get("requestKey.requestHasNoKeyOwn"), StorageTexts.Word("requestKey.chooseOneAtRandomFor", Longest))
            : new RequestKey(key, Convert.ToHexStringLower(SHA256.HashData(bytes)));

    internal static Failure Reused() => new(StorageFailures.KeyReused, StorageTexts.Get("requestKey.thisKeyCameWithAnother"), StorageTexts.Get("requestKey.chooseNewKeyForNew"));
}
