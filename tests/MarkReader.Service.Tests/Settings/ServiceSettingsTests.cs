using MarkReader.Quantities;
using MarkReader.Service.Settings;

namespace MarkReader.Service.Tests.Settings;

public sealed class ServiceSettingsTests
{
    [Fact]
    public void Nothing_given_means_the_usual_port_and_the_user_s_folder()
    {
        ServiceSettings settings = Read([], ("HOME", "/home/user")).ValueOrThrow();
        Assert.Null(settings.Port);
        Assert.Equal("/home/user/.local/share/markreader", settings.Data.Root);
    }

    [Theory]
    [InlineData("--port", "6000", "--data", "/srv/marks")]
    [InlineData("--port=6000", "--data=/srv/marks")]
    public void The_command_line_comes_before_the_environment(params string[] arguments)
    {
        ServiceSettings settings = Read(arguments, ("MARKREADER_PORT", "7000"), ("MARKREADER_DATA", "/other")).ValueOrThrow();
        Assert.Equal(6000, settings.Port);
        Assert.Equal("/srv/marks", settings.Data.Root);
    }

    [Fact]
    public void The_environment_comes_before_the_usual()
    {
        ServiceSettings settings = Read([], ("MARKREADER_PORT", "7000"), ("MARKREADER_DATA", "/other"), ("PORT", "1")).ValueOrThrow();
        Assert.Equal(7000, settings.Port);
        Assert.Equal("/other", settings.Data.Root);
    }

    [Theory]
    [InlineData("--port=many")]
    [InlineData("--port=65536")]
    [InlineData("--port=-1")]
    [InlineData("--prot=80")]
    [InlineData("--port")]
    [InlineData("stray")]
    [InlineData("--phones=perhaps")]
    public void What_is_not_understood_is_refused(string argument)
    {
        Assert.False(Read([argument]).TryGet(out _, out Failure? failure));
        Assert.Equal("SETTING_INVALID", failure.Code.Name);
    }

    [Theory]
    [InlineData(false, null)]
    [InlineData(false, "")]
    [InlineData(false, "0")]
    [InlineData(true, "1")]
    [InlineData(true, null, "--phones")]
    [InlineData(true, "0", "--phones", "--port", "6000")]
    [InlineData(true, null, "--port", "6000", "--phones")]
    [InlineData(false, "1", "--phones=false")]
    public void Phones_come_in_only_where_asked_for(bool expected, string? variable, params string[] arguments)
    {
        ServiceSettings settings = Read(arguments, ("MARKREADER_PHONES", variable!)).ValueOrThrow();
        Assert.Equal(expected, settings.Phones);
        Assert.Equal(arguments.Contains("--port") ? 6000 : null, settings.Port);
    }

    private static Outcome<ServiceSettings> Read(string[] arguments, params (string Name, string Value)[] environment) =>
        ServiceSettings.Read(arguments, name => environment.FirstOrDefault(variable => variable.Name == name).Value);
}
