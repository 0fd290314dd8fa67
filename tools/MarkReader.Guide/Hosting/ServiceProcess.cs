using System.Diagnostics;
using System.Text.RegularExpressions;

namespace MarkReader.Guide.Hosting;

/// <summary>The built service on a free port, with a data folder of its own that goes with it.</summary>
internal sealed partial class ServiceProcess : IAsyncDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromMinutes(1);

    private readonly Process _process;
    private readonly string _data;

    private ServiceProcess(Process process, string data, Uri address) => (_process, _data, Address) = (process, data, address);

    public Uri Address { get; }

    /// <param name="program">Path of the service's program.</param>
    /// <exception cref="InvalidOperationException">It did not start.</exception>
    public static async Task<ServiceProcess> StartAsync(string program)
    {
        string data = Directory.CreateTempSubdirectory("markreader-guide-").FullName;
        ProcessStartInfo start = new(Environment.ProcessPath!, [program, "--port", "0", "--data", data]) { RedirectStandardOutput = true };
        // Times in the pictures do not tell where they were made.
        start.Environment["TZ"] = "UTC";
        Process process = Process.Start(start)!;
        using CancellationTokenSource patience = new(s_patience);
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            if (AddressLine().Match(line) is not { Success: true } said)
                continue;
            // What it says later is read and dropped: a full pipe would stop it.
            _ = process.StandardOutput.BaseStream.CopyToAsync(Stream.Null, CancellationToken.None);
            return new(process, data, new(said.Groups[1].Value));
        }

        throw new InvalidOperationException("The service ended before it said its address.");
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_data, recursive: true);
    }

    [GeneratedRegex(@"\bis at (http://\S+)")]
    private static partial Regex AddressLine();
}
