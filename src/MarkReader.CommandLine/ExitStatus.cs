using MarkReader.Quantities;

namespace MarkReader.CommandLine;

/// <summary>The exit statuses that scripts rely on.</summary>
internal static class ExitStatus
{
    public const int Done = 0;
    public const int Fault = 1;
    public const int BadInput = 2;
    public const int NotMeasurable = 3;

    public static int Of(Failure failure) => failure.Code.Kind == FailureKind.NotMeasurable ? NotMeasurable : BadInput;
}
