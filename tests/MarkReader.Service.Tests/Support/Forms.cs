using System.Globalization;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;

namespace MarkReader.Service.Tests.Support;

/// <summary>Forms as clients send them.</summary>
internal static class Forms
{
    public static MultipartFormDataContent Form(params (string Name, object Value)[] fields)
    {
        MultipartFormDataContent form = [];
        foreach ((string name, object value) in fields)
        {
            if (value is byte[] bytes)
            {
                ByteArrayContent file = new(bytes);
                file.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
                form.Add(file, name, name + ".jpg");
            }
            else
            {
                form.Add(new StringContent(Convert.ToString(value, CultureInfo.InvariantCulture)!), name);
            }
        }
        return form;
    }

    public static MultipartFormDataContent Aim(params (string Name, object Value)[] changes)
    {
        Dictionary<string, object> fields = new() { ["near"] = Photos.Near, ["far"] = Photos.Far, ["nearPath"] = 80, ["farPath"] = 480 };
        foreach ((string name, object value) in changes)
            fields[name] = value;
        return Form([.. fields.Where(field => field.Value is not "").Select(field => (field.Key, field.Value))]);
    }

    public static async Task<JsonElement> JsonAsync(this HttpResponseMessage response) =>
        await response.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);

    public static string Text(this JsonElement element, string name) => element.GetProperty(name).GetString()!;

    /// <summary>Checks that an answer is problem details with this status and code, and gives them.</summary>
    public static async Task<JsonElement> ProblemAsync(this HttpResponseMessage response, System.Net.HttpStatusCode status, string code)
    {
        string text = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(status == response.StatusCode, $"{(int)response.StatusCode} {text}");
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        JsonElement problem = JsonSerializer.Deserialize<JsonElement>(text);
        Assert.Equal(code, problem.Text("code"));
        Assert.Equal((int)status, problem.GetProperty("status").GetInt32());
        Assert.NotEmpty(problem.Text("detail"));
        Assert.NotEmpty(problem.Text("hint"));
        return problem;
    }
}
