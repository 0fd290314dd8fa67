using MarkReader.CommandLine.Commands;
using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine;

/// <summary>Faults of the program or its installation, in one line.</summary>
internal static class Faults
{
    /// <summary>Tells the fault as far as the streams still take it.</summary>
    public static int Report(Terminal terminal, Exception fault)
    {
        try
        {
            return terminal.Refuse(Describe(fault), ExitStatus.Fault);
        }
        catch (IOException)
        {
            // A stream is full or closed; the exit status is all that is left to tell.
            return ExitStatus.Fault;
        }
    }

    private static Failure Describe(Exception fault)
    {
        for (Exception? e = fault; e is not null; e = e.InnerException)
        {
            if (e is DllNotFoundException)
                return new(new(CommandLineFailures.NativeLibraryMissing, FailureKind.BadInput), CommandTexts.Get("faults.nativeLibraryCannotBeLoaded"), CommandTexts.Get("faults.installLibrariesThatOpencvNeeds"));
        }

        return new(
            new(CommandLineFailures.InternalFault, FailureKind.BadInput),
            CommandTexts.Word("faults.programFailed", fault.GetType().Name, fault.Message.TrimEnd('.')),
            CommandTexts.Get("faults.reportThisLineTogetherWith"));
    }
}
