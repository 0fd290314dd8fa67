using MarkReader.Service.Display;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace MarkReader.Service.Tests.Support;

/// <summary>The service with the German texts of <see cref="Translation"/> beside it.</summary>
public sealed class TranslatedSite : Site
{
    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureTestServices(services => services.AddSingleton(new Languages([Languages.English, Translation.German])));
    }
}
