using MarkReader.CommandLine.Output;
using MarkReader.Quantities;

namespace MarkReader.CommandLine;

/// <summary>Faults of the program or its installation, in one line.</summary>
internal static class Faults
{
    private const string Install =
        "install the libraries that OpenCV needs: 'apt-get install libgtk-3-0 libdrm2 libatomic1' on Debian 12, 'apt-get install libgtk-3-0t64 libdrm2 libatomic1' on Ubuntu 24.04";

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
                return new(new(CommandLineFailures.NativeLibraryMissing, FailureKind.BadInput), "a native library cannot be loaded", Install);
        }

        return new(
            new(CommandLineFailures.InternalFault, FailureKind.BadInput),
            $"the program failed ({fault.GetType().Name}: {fault.Message.TrimEnd('.')})",
            "report this line together with the command and its files");
    }
}
