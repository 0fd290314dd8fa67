using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Hosting.Phones;
using MarkReader.Service.Settings;
using Serilog.Core;

if (!ServiceSettings.Read(args, Environment.GetEnvironmentVariable).TryGet(out ServiceSettings? settings, out Failure? failure)
    || !Database.Open(settings.Data).TryGet(out Database? database, out failure)
    || !PhoneGate.Open(settings).TryGet(out PhoneGate? phones, out failure))
{
    await Console.Error.WriteLineAsync($"error: {failure}");
    return 2;
}

using Logger logger = Logging.Create(settings.Data);
await using WebApplication app = ServiceHost.Build(args, settings, database, phones, logger);
return await ServiceHost.RunAsync(app, settings, logger);

/// <summary>Seen by the tests, which start the service as it is.</summary>
public partial class Program;
