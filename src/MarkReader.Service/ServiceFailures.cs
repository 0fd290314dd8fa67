using MarkReader.Quantities;

namespace MarkReader.Service;

/// <summary>The refusals of the service itself.</summary>
public static class ServiceFailures
{
    public static readonly FailureCode SettingInvalid = Bad("SETTING_INVALID");
    public static readonly FailureCode PortTaken = Bad("PORT_TAKEN");
    public static readonly FailureCode HostNotAllowed = Bad("HOST_NOT_ALLOWED");
    public static readonly FailureCode OriginNotAllowed = Bad("ORIGIN_NOT_ALLOWED");
    public static readonly FailureCode KeyMissing = Bad("KEY_MISSING");
    public static readonly FailureCode KeyWrong = Bad("KEY_WRONG");
    public static readonly FailureCode KeyTries = Bad("KEY_TRIES");
    public static readonly FailureCode RequestTooLarge = Bad("REQUEST_TOO_LARGE");
    public static readonly FailureCode RequestUnreadable = Bad("REQUEST_UNREADABLE");
    public static readonly FailureCode MediaTypeNotTaken = Bad("MEDIA_TYPE_NOT_TAKEN");
    public static readonly FailureCode FieldMissing = Bad("FIELD_MISSING");
    public static readonly FailureCode FieldInvalid = Bad("FIELD_INVALID");
    public static readonly FailureCode PhotosGone = Bad("PHOTOS_GONE");
    public static readonly FailureCode IfMatchMissing = Bad("IF_MATCH_MISSING");
    public static readonly FailureCode IfMatchInvalid = Bad("IF_MATCH_INVALID");
    public static readonly FailureCode NotFound = Bad("NOT_FOUND");
    public static readonly FailureCode Busy = Bad("BUSY");

    /// <summary>A fault of the program; not a refusal, but answered in the same form.</summary>
    public static readonly FailureCode Fault = Bad("FAULT");

    private static FailureCode Bad(string name) => new(name, FailureKind.BadInput);
}
