using System.Globalization;
using MarkReader.Application.Storage;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Serilog.Filters;

namespace MarkReader.Service.Hosting;

/// <summary>Where the service says what it does: short on the console, in full in rolling files of the data folder.</summary>
internal static class Logging
{
    private const long FileSize = 5 * 1024 * 1024;
    private const int FilesKept = 10;

    public static Logger Create(DataFolder data) => new LoggerConfiguration()
        .MinimumLevel.Information()
        .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
        .MinimumLevel.Override("System", LogEventLevel.Warning)
        // A port that is taken is told in one line; any other failure to start ends the program with its own trace.
        .MinimumLevel.Override("Microsoft.Extensions.Hosting.Internal.Host", LogEventLevel.Fatal)
        .Enrich.FromLogContext()
        .WriteTo.Logger(console => console
            .Filter.ByExcluding(IsQuietRequest)
            .WriteTo.Console(outputTemplate: "{Message:lj}{NewLine}{Exception}", formatProvider: CultureInfo.InvariantCulture))
        .WriteTo.File(
            Path.Combine(data.Logs, "markreader-.log"),
            formatProvider: CultureInfo.InvariantCulture,
            rollingInterval: RollingInterval.Day,
            fileSizeLimitBytes: FileSize,
            rollOnFileSizeLimit: true,
            retainedFileCountLimit: FilesKept)
        .CreateLogger();

    private static bool IsQuietRequest(LogEvent entry) =>
        entry.Level < LogEventLevel.Warning && Matching.FromSource("Serilog.AspNetCore.RequestLoggingMiddleware")(entry);
}
