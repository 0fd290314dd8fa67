using MarkReader.Quantities;

namespace MarkReader.Service.Uploads;

/// <summary>A refusal and the field of the form that it concerns.</summary>
internal sealed record FieldFailure(string Field, Failure Failure);
