using System.Text.Json;
using System.Text.Json.Serialization;
using MarkReader.Application.Cameras;
using MarkReader.Application.CardChecks;
using MarkReader.Application.History;
using MarkReader.Application.Interim;
using MarkReader.Application.Machines;
using MarkReader.Application.Records;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Application.VisitLog;
using MarkReader.Application.VisitLog.Bundles;
using MarkReader.Service.Api;
using MarkReader.Service.Display;
using MarkReader.Service.Guide;
using MarkReader.Service.Hosting.Phones;
using MarkReader.Service.Pages;
using MarkReader.Service.Samples;
using MarkReader.Service.Settings;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.FileProviders;
using Serilog;
using ILogger = Serilog.ILogger;

namespace MarkReader.Service.Hosting;

/// <summary>Puts the service together and runs it.</summary>
internal static class ServiceHost
{
    private const int WaitingPerCore = 4;

    public static WebApplication Build(string[] args, ServiceSettings settings, Database database, PhoneGate phones, ILogger logger)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = ServiceSettings.ForHost(args),
            // Beside the program, wherever it was started from.
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.UseUrls(Listening.Address(settings));
        // Who comes over loopback needs no key: nobody may claim to by a header, whatever the environment says.
        builder.Configuration["ForwardedHeaders_Enabled"] = "false";
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = UploadForm.RequestLimit;
            kestrel.Limits.MaxConcurrentConnections = 64;
        });

        IServiceCollection services = builder.Services;
        services.AddSerilog(logger);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton(settings.Data);
        services.AddSingleton(phones);
        services.AddSingleton(database);
        services.AddSingleton<PhotoStore>();
        services.AddSingleton<AimStore>();
        services.AddSingleton<CameraStore>();
        services.AddSingleton<CalibrationStore>();
        services.AddSingleton<CalibrationDesk>();
        services.AddSingleton<CardCheckStore>();
        services.AddSingleton<CardCheckDesk>();
        services.AddSingleton<CardCheckDispatch>();
        services.AddSingleton<HeldPhotos>();
        services.AddSingleton<PhotoIntake>();
        services.AddSingleton<InterimStore>();
        services.AddSingleton<InterimDesk>();
        services.AddSingleton<InterimDispatch>();
        services.AddSingleton<MeasuringProgress>();
        services.AddSingleton<MachineStore>();
        services.AddSingleton<VisitStore>();
        services.AddSingleton<VisitDesk>();
        services.AddSingleton<VisitStandings>();
        services.AddSingleton<StudyStore>();
        services.AddSingleton<StudyDesk>();
        services.AddSingleton<ScatterEntry>();
        services.AddSingleton<PhotoDesk>();
        services.AddSingleton<RecordDesk>();
        services.AddSingleton<BundleDesk>();
        services.AddSingleton<HistoryDesk>();
        services.AddSingleton<AimDesk>();
        services.AddSingleton<AimDispatch>();
        services.AddSingleton(SampleSet.Read(Path.Combine(AppContext.BaseDirectory, "samples")));
        services.AddSingleton(GuideBook.Read(GuideBook.FolderIn(Path.Combine(AppContext.BaseDirectory, "wwwroot"))));
        services.AddSingleton(new MeasuringTurns(Environment.ProcessorCount, WaitingPerCore * Environment.ProcessorCount));
        services.Configure<FormOptions>(UploadForm.Limit);
        services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase));
            json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
        });
        // A value that cannot be read is the caller's mistake in every environment.
        services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = false);
        services.AddProblemDetails();
        services.AddExceptionHandler<FaultHandler>();
        // An answered fault is a fault all the same: it belongs into the log.
        services.Configure<ExceptionHandlerOptions>(faults => faults.SuppressDiagnosticsCallback = _ => false);
        services.AddRazorPages();
        services.AddLocalization();
        services.AddHttpContextAccessor();
        services.AddScoped<Figures>();
        services.AddScoped<MeasureWords>();
        services.AddSingleton(Languages.In(AppContext.BaseDirectory));
        // Nothing is protected with keys here: forms carry no token, and no cookie is read by the framework.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        // A lambda, not a method group: only then does the package add the XML comments.
        services.AddOpenApi(options => ApiDescription.Configure(options));

        WebApplication app = builder.Build();
        app.Use(SecurityHeaders.Invoke);
        app.UseLanguages();
        app.UseExceptionHandler();
        app.UseSerilogRequestLogging();
        app.Use(new LocalOnly(phones).Invoke);
        app.Use(phones.Invoke);
        app.UseMissingPages();
        app.UseStaticFiles(new StaticFileOptions
        {
            FileProvider = new PhysicalFileProvider(Path.Combine(AppContext.BaseDirectory, "wwwroot")),
        });
        app.UseRouting();
        app.MapOpenApi();
        // Browsers ask for this one on their own when they show a file that names no icon.
        app.MapGet("/favicon.ico", () => TypedResults.PhysicalFile(Path.Combine(AppContext.BaseDirectory, "wwwroot", "icon.svg"), "image/svg+xml")).ExcludeFromDescription();
        app.MapPhotos();
        app.MapAims();
        app.MapMachines();
        app.MapMachineHistory();
        app.MapCalibrations();
        app.MapCameras();
        app.MapStudies();
        app.MapStudyResults();
        app.MapCardChecks();
        app.MapInterim();
        app.MapVisits();
        app.MapVisitRecords();
        app.MapVisitPictures();
        app.MapVisitEvents();
        app.MapCards();
        app.MapSamples();
        app.MapRazorPages();
        return app;
    }

    /// <summary>Runs until it is told to stop. The exit status is 2 when the port cannot be had.</summary>
    public static async Task<int> RunAsync(WebApplication app, ServiceSettings settings, ILogger logger)
    {
        try
        {
            await app.StartAsync();
        }
        catch (IOException fault) when (fault.InnerException is AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"error: {Listening.Taken(settings.Port)}");
            return 2;
        }
        if (settings.Port is null && !app.Urls.Any(url => url.EndsWith($":{ServiceSettings.UsualPort}", StringComparison.Ordinal)))
            logger.Information("Port {Port} is taken by another program; a free one is used instead.", ServiceSettings.UsualPort);
        int port = new Uri(app.Urls.First()).Port;
        string here = settings.Phones ? FormattableString.Invariant($"http://127.0.0.1:{port}") : app.Urls.First();
        logger.Information("MarkReader is at {Address} (data in {Folder}; stop with Ctrl+C)", here, settings.Data.Root);
        if (settings.Phones)
            SayPhones(here, OwnAddresses.Now(port), logger);
        await app.WaitForShutdownAsync();
        return 0;
    }

    private static void SayPhones(string here, IReadOnlyList<string> addresses, ILogger logger)
    {
        if (addresses.Count == 0)
            logger.Warning("Phones cannot come in: this machine has no address on a network. Connect it; nothing need be started again.");
        else
            logger.Information("Phones on the same network: {Addresses}; to let one in, open {Page}. Their key and pictures go over the network unencrypted.", string.Join(", ", addresses), here + "/phones");
    }
}
