using System.Text;

namespace MarkReader.Service.Tests.Support;

/// <summary>Machines' documents and requests with JSON, as clients send them.</summary>
internal static class Machines
{
    public static string Named(string name) => $$"""
        { "name": "{{name}}", "legs": [
            { "name": "1", "nearPath": 80, "farPath": 480, "pathUncertainty": 2, "incidenceDegrees": 45 },
            { "name": "2", "nearPath": 60, "farPath": 560, "pathUncertainty": 2 } ],
          "bed": { "x": 500, "y": 400 }, "washers": [0.5, 0.8, 1.0, 1.6] }
        """;

    public static async Task<HttpResponseMessage> SendAsync(this HttpClient client, HttpMethod method, string address, string? json, params (string Name, string Value)[] headers)
    {
        using HttpRequestMessage request = new(method, address);
        if (json is not null)
            request.Content = new StringContent(json, Encoding.UTF8, "application/json");
        foreach ((string name, string value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
