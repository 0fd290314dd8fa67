using MarkReader.Quantities;

namespace MarkReader.Application.Records;

/// <summary>Refusals of a record.</summary>
public static class RecordFailures
{
    public static readonly FailureCode UnitUnknown = new("UNIT_UNKNOWN", FailureKind.BadInput);

    public static readonly FailureCode DecimalUnknown = new("DECIMAL_SIGN_UNKNOWN", FailureKind.BadInput);

    /// <summary>A record is written as .pdf, .html, .csv or .json.</summary>
    public static readonly FailureCode FormatUnknown = new("RECORD_FORMAT_UNKNOWN", FailureKind.BadInput);
}
