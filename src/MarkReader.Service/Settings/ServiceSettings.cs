using System.Globalization;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Service.Settings;

/// <summary>How the service is to run.</summary>
/// <param name="Data">Where photos, results and logs are kept: --data FOLDER, MARKREADER_DATA, or the user's shared data.</param>
/// <param name="Port">The port asked for with --port or MARKREADER_PORT (0: any free one); null for <see cref="UsualPort"/> or, if that is taken, any free one.</param>
public sealed record ServiceSettings(DataFolder Data, int? Port)
{
    public const int UsualPort = 5080;

    public const string PortVariable = "MARKREADER_PORT";

    /// <summary>Names that the web host itself understands; everything else must be one of ours.</summary>
    private static readonly string[] s_hostNames = ["environment", "contentRoot", "applicationName"];

    /// <summary>Reads the command line (--name value or --name=value) and the environment; the command line comes first.</summary>
    public static Outcome<ServiceSettings> Read(IReadOnlyList<string> arguments, Func<string, string?> environment)
    {
        Dictionary<string, string> given = new(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < arguments.Count; i++)
        {
            string[] parts = arguments[i].Split('=', 2);
            string name = parts[0].StartsWith("--", StringComparison.Ordinal) ? parts[0][2..] : "";
            if (!s_hostNames.Append("data").Append("port").Contains(name, StringComparer.OrdinalIgnoreCase))
                return Unknown(arguments[i]);
            if (parts.Length == 1 && ++i == arguments.Count)
                return Unknown(arguments[i - 1] + " without a value");
            given[name] = parts.Length == 2 ? parts[1] : arguments[i];
        }

        DataFolder data = given.TryGetValue("data", out string? folder) && folder.Length > 0
            ? new(Path.GetFullPath(folder))
            : DataFolder.Locate(environment);
        string? port = given.GetValueOrDefault("port") ?? environment(PortVariable);
        if (string.IsNullOrEmpty(port))
            return new ServiceSettings(data, null);
        return int.TryParse(port, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number <= 65_535
            ? new ServiceSettings(data, number)
            : new Failure(ServiceFailures.SettingInvalid, $"the port '{port}' is not a number from 0 to 65535", $"give --port or {PortVariable} a free port, 0 for any");
    }

    private static Failure Unknown(string argument) => new(
        ServiceFailures.SettingInvalid,
        $"the service does not know {argument}",
        "use --port NUMBER and --data FOLDER, or nothing");
}
