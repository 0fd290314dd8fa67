using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Hosting.Phones;

/// <summary>The key by which phones are let in: 256 random bits, made once and kept in the data folder, readable by its owner alone.</summary>
/// <remarks>
/// A phone keeps no key but a proof made from it (HMAC-SHA-256, RFC 2104), which lets nobody else in by /join. Both are compared
/// in a time that does not depend on where they differ.
/// </remarks>
internal sealed class PhoneKey
{
    private const int Bytes = 32;
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly string _file;
    private readonly Lock _lock = new();
    private volatile Pair _now;

    private PhoneKey(string file, Pair now) => (_file, _now) = (file, now);

    /// <summary>The key, in the signs of base64url (RFC 4648, section 5).</summary>
    public string Text => _now.Key;

    /// <summary>What a phone that has joined shows.</summary>
    public string Proof => _now.Proof;

    /// <summary>The key that is kept, or a new one where none or a damaged one is.</summary>
    public static Outcome<PhoneKey> Open(DataFolder data)
    {
        try
        {
            if (Read(data.PhoneKeyFile) is { } kept)
                return new PhoneKey(data.PhoneKeyFile, kept);
            Pair made = Make();
            Write(data.PhoneKeyFile, made.Key);
            return new PhoneKey(data.PhoneKeyFile, made);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return NotKept(data.PhoneKeyFile, fault.Message);
        }
    }

    /// <summary>A new key in place of this one: every phone must join anew. The old one stays when the new one cannot be kept.</summary>
    /// <returns>What hindered it, or null.</returns>
    public Failure? Renew()
    {
        lock (_lock)
        {
            Pair made = Make();
            try
            {
                Write(_file, made.Key);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                return NotKept(_file, fault.Message);
            }
            _now = made;
            return null;
        }
    }

    public bool IsKey(string? text) => Same(text, _now.Key);

    public bool IsProof(string? text) => Same(text, _now.Proof);

    private static bool Same(string? given, string own) =>
        given is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(own));

    private static Pair Make() => Pair.Of(RandomNumberGenerator.GetBytes(Bytes));

    private static Pair? Read(string file)
    {
        if (new FileInfo(file) is not { Exists: true, Length: < 100 })
            return null;
        byte[] text = File.ReadAllBytes(file);
        Span<byte> bytes = stackalloc byte[100];
        ReadOnlySpan<byte> signs = text.AsSpan().TrimEnd("\r\n"u8);
        if (!Base64Url.IsValid(signs, out int length) || length != Bytes || !Base64Url.TryDecodeFromUtf8(signs, bytes, out length))
            return null;
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(file, OwnerOnly);
        return Pair.Of(bytes[..length]);
    }

    private static void Write(string file, string key)
    {
        string unfinished = $"{file}.{Guid.NewGuid():N}.part";
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnerOnly;
        try
        {
            using (FileStream stream = new(unfinished, options))
            {
                stream.Write(Encoding.ASCII.GetBytes(key + "\n"));
                stream.Flush(flushToDisk: true);
            }
            File.Move(unfinished, file, overwrite: true);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    private static Failure NotKept(string file, string reason) => new(
        StorageFailures.DataFolderUnusable, ServiceTexts.Word("phoneKey.keyForPhonesCannotBe", file, reason.TrimEnd('.')), ServiceTexts.Word("phoneKey.makeWritableOrNameAnother", DataFolder.Variable));

    private sealed record Pair(string Key, string Proof)
    {
        public static Pair Of(ReadOnlySpan<byte> bytes) =>
            new(Base64Url.EncodeToString(bytes), Base64Url.EncodeToString(HMACSHA256.HashData(bytes, "MarkReader phone"u8)));
    }
}
