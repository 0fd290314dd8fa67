using MarkReader.Quantities;

namespace MarkReader.Application.Auditing;

/// <summary>The words of an audit, from AuditTexts.resx.</summary>
internal sealed class AuditTexts : Texts<AuditTexts>;
