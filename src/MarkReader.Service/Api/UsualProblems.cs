namespace MarkReader.Service.Api;

/// <summary>The statuses of refusals that several addresses have in common.</summary>
internal static class UsualProblems
{
    /// <summary>Of a change of what is kept with a version.</summary>
    public static int[] Change { get; } =
        [StatusCodes.Status400BadRequest, StatusCodes.Status404NotFound, StatusCodes.Status412PreconditionFailed, StatusCodes.Status428PreconditionRequired];

    /// <summary>Of a change whose body may be too large or of another kind.</summary>
    public static int[] ChangeByBody { get; } =
        [.. Change, StatusCodes.Status409Conflict, StatusCodes.Status413PayloadTooLarge, StatusCodes.Status415UnsupportedMediaType];

    /// <summary>Of photos that are measured and kept.</summary>
    public static int[] Photos { get; } =
    [
        StatusCodes.Status400BadRequest, StatusCodes.Status409Conflict, StatusCodes.Status413PayloadTooLarge,
        StatusCodes.Status415UnsupportedMediaType, StatusCodes.Status422UnprocessableEntity, StatusCodes.Status503ServiceUnavailable,
    ];

    /// <summary>The same where they are added to something, or measured with something, that must be there.</summary>
    public static int[] Photo { get; } = [.. Photos, StatusCodes.Status404NotFound];
}
