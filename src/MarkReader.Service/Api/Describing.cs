namespace MarkReader.Service.Api;

/// <summary>What the interface's description says in several places.</summary>
internal static class Describing
{
    public const string Visit = "The visit's number.";

    public const string Machine = "The machine's number.";

    public const string Calibration = "The calibration's number.";

    public const string Study = "The study's number.";

    public const string CardCheck = "The check's number.";

    public const string InterimSet = "The set's number.";

    public const string Camera = "The camera's number.";

    /// <summary>Refusals that an address answers with, as problem details.</summary>
    public static RouteHandlerBuilder ProducesProblems(this RouteHandlerBuilder route, params ReadOnlySpan<int> statuses)
    {
        foreach (int status in statuses)
            route.ProducesProblem(status);
        return route;
    }
}
