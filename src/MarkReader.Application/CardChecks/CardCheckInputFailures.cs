using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>Refusals about checks of printed cards.</summary>
public static class CardCheckInputFailures
{
    public static readonly FailureCode TooManyPhotos = new("CARD_MANY_PHOTOS", FailureKind.BadInput);
    public static readonly FailureCode KindsDiffer = new("CARD_KINDS_DIFFER", FailureKind.BadInput);

    /// <summary>As many checks are kept as there may be.</summary>
    public static readonly FailureCode TooManyChecks = new("TOO_MANY_CARD_CHECKS", FailureKind.BadInput);

    /// <summary>A check's name is too long, or has signs that cannot be shown.</summary>
    public static readonly FailureCode NameInvalid = new("CARD_CHECK_NAME_INVALID", FailureKind.BadInput);

    public static readonly FailureCode LimitInvalid = new("CARD_TOLERANCE_INVALID", FailureKind.BadInput);
}
