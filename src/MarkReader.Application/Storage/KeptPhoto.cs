namespace MarkReader.Application.Storage;

/// <summary>An original photo that is kept.</summary>
/// <param name="Id">SHA-256 of its bytes, 64 hexadecimal digits in lower case.</param>
/// <param name="Format">What kind of file it is.</param>
/// <param name="Length">Size in bytes.</param>
/// <param name="ReceivedAt">When it first came in (UTC, to the millisecond).</param>
public sealed record KeptPhoto(string Id, OriginalFormat Format, long Length, DateTimeOffset ReceivedAt);

/// <summary>A photo with whether it is new: false when the same bytes were kept before.</summary>
public sealed record PhotoReceipt(KeptPhoto Photo, bool IsNew);

/// <summary>The bytes of an original, checked against its digest.</summary>
public sealed record Original(KeptPhoto Photo, byte[] Bytes);
