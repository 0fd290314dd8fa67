using System.Runtime.InteropServices;

namespace MarkReader.Application.Storage;

/// <summary>Writes a folder's list of names to the disk, without which a renamed file can lose its new name when the power fails.</summary>
/// <remarks>The class library has no call for it. Where the system knows no such thing, nothing is done.</remarks>
internal static class FolderFlush
{
    public static void ToDisk(string folder)
    {
        if (!OperatingSystem.IsLinux())
            return;
        int handle = Open(folder, 0);
        if (handle < 0)
            throw new IOException($"{folder} cannot be opened (error {Marshal.GetLastPInvokeError()}).");
        try
        {
            if (Flush(handle) != 0)
                throw new IOException($"{folder} cannot be written to the disk (error {Marshal.GetLastPInvokeError()}).");
        }
        finally
        {
            _ = Close(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static extern int Flush(int handle);

    [DllImport("libc", EntryPoint = "close", SetLastError = true)]
    private static extern int Close(int handle);
}
