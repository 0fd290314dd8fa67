using System.Globalization;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Settings;

/// <summary>How the service is to run.</summary>
/// <param name="Data">Where photos, results and logs are kept: --data FOLDER, MARKREADER_DATA, or the user's shared data.</param>
/// <param name="Port">The port asked for with --port or MARKREADER_PORT (0: any free one); null for <see cref="UsualPort"/> or, if that is taken, any free one.</param>
/// <param name="Phones">Whether phones on the same network may come in, with a key: --phones or MARKREADER_PHONES=1.</param>
public sealed record ServiceSettings(DataFolder Data, int? Port, bool Phones)
{
    public const int UsualPort = 5080;

    public const string PortVariable = "MARKREADER_PORT";

    public const string PhonesVariable = "MARKREADER_PHONES";

    private const string PhonesFlag = "--phones";

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
            if (IsFlag(arguments[i]))
            {
                given["phones"] = "1";
                continue;
            }
            if (!s_hostNames.Concat(["data", "port", "phones"]).Contains(name, StringComparer.OrdinalIgnoreCase))
                return Unknown(arguments[i]);
            if (parts.Length == 1 && ++i == arguments.Count)
                return Unknown(arguments[i - 1] + ServiceTexts.Get("serviceSettings.withoutValue"));
            given[name] = parts.Length == 2 ? parts[1] : arguments[i];
        }

        DataFolder data = given.TryGetValue("data", out string? folder) && folder.Length > 0
            ? new(Path.GetFullPath(folder))
            : DataFolder.Locate(environment);
        string? word = given.GetValueOrDefault("phones") ?? environment(PhonesVariable);
        return ReadPhones(word) is { } phones
            ? ReadPort(given.GetValueOrDefault("port") ?? environment(PortVariable), data, phones)
            : new Failure(ServiceFailures.SettingInvalid, ServiceTexts.Word("serviceSettings.doesNotSayWhetherPhones", word), ServiceTexts.Word("serviceSettings.giveOrOrNothing", PhonesFlag, PhonesVariable));
    }

    /// <summary>The arguments without the flag, which the web host would take for a name without its value.</summary>
    internal static string[] ForHost(IEnumerable<string> arguments) => [.. arguments.Where(argument => !IsFlag(argument))];

    private static bool IsFlag(string argument) => string.Equals(argument, PhonesFlag, StringComparison.OrdinalIgnoreCase);

    private static bool? ReadPhones(string? text) => text?.ToUpperInvariant() switch
    {
        null or "" or "0" or "FALSE" => false,
        "1" or "TRUE" => true,
        _ => null,
    };

    private static Outcome<ServiceSettings> ReadPort(string? port, DataFolder data, bool phones)
    {
        if (string.IsNullOrEmpty(port))
            return new ServiceSettings(data, null, phones);
        return int.TryParse(port, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number <= 65_535
            ? new ServiceSettings(data, number, phones)
            : new Failure(ServiceFailures.SettingInvalid, ServiceTexts.Word("serviceSettings.portNotNumberFrom", port), ServiceTexts.Word("serviceSettings.givePortOrFreePort", PortVariable));
    }

    private static Failure Unknown(string argument) => new(
        ServiceFailures.SettingInvalid,
        ServiceTexts.Word("serviceSettings.serviceDoesNotKnow", argument),
        ServiceTexts.Get("serviceSettings.usePhonesPortNumberAnd"));
}
