using System.CommandLine;

namespace MarkReader.CommandLine.Commands;

/// <summary>Options that several commands share.</summary>
internal static class CommonOptions
{
    public const string JsonName = "--json";

    public static Option<bool> Json() => new(JsonName) { Description = CommandTexts.Get("commonOptions.printResultAsJson") };

    public static Option<string> DebugDir() => new("--debug-dir")
    {
        Description = CommandTexts.Get("commonOptions.writeEveryStagePictureInto"),
        HelpName = "FOLDER",
    };

    public static Option<string> Overlay(string what) => new("--overlay")
    {
        Description = CommandTexts.Say("commonOptions.writePhotoWithDrawnOn", what),
        HelpName = "FILE",
    };

    public static Option<string> Place(string name, string description) => new(name) { Description = description, HelpName = "X,Y" };

    public static Option<string> Stock() => new("--stock")
    {
        Description = CommandTexts.Get("commonOptions.washersAndSheetsYouHave"),
        HelpName = "LIST",
    };

    public static Option<string> Number(string name, string description, string helpName = "MM") => new(name) { Description = description, HelpName = helpName };
}
