using System.Text.Encodings.Web;
using System.Text.Json;

namespace MarkReader.Service.Guide;

/// <summary>What the program itself said and showed during a first visit; written by tools/guide, never by hand.</summary>
/// <param name="Machine">Number of the practice machine that the visit was played on.</param>
/// <param name="Chapters">In the order of the visit.</param>
/// <param name="Events">What was done in the visit, as visit files have it: with them the pages of any chapter can be shown again.</param>
public sealed record GuideBook(int Machine, IReadOnlyList<GuideChapter> Chapters, IReadOnlyList<JsonElement> Events)
{
    public const string FileName = "guide.json";

    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        // Written for people to compare: signs and quotation marks stay as they are.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The folder of the pictures and of this file, in the folder that the service serves files from.</summary>
    public static string FolderIn(string served) => Path.Combine(served, "guide");

    /// <summary>Reads the folder's file; a book without chapters when there is none.</summary>
    /// <exception cref="JsonException">The file is not what tools/guide writes.</exception>
    public static GuideBook Read(string folder)
    {
        string file = Path.Combine(folder, FileName);
        return File.Exists(file) ? JsonSerializer.Deserialize<GuideBook>(File.ReadAllBytes(file), s_json)! : new(0, [], []);
    }

    public void Write(string folder) => File.WriteAllText(Path.Combine(folder, FileName), JsonSerializer.Serialize(this, s_json) + "\n");
}

/// <summary>One thing of the visit: what the page said then.</summary>
/// <param name="Name">Names the texts that stand around it: chapter.NAME.title and so on.</param>
/// <param name="After">Number of events of the visit that came before it.</param>
/// <param name="Heading">The heading of the part of the page that it is about.</param>
/// <param name="Says">Its sentences.</param>
/// <param name="Buttons">The names of its buttons and folds.</param>
/// <param name="Press">Name of the button that is pressed then; null when none is.</param>
/// <param name="Picture">That part of the page.</param>
public sealed record GuideChapter(
    string Name, int After, string Heading, IReadOnlyList<string> Says, IReadOnlyList<string> Buttons, string? Press, GuidePicture? Picture);

/// <summary>A picture of the guide.</summary>
/// <param name="File">Its name in the guide's folder.</param>
/// <param name="Width">Of the picture, px.</param>
/// <param name="Height">Of the picture, px.</param>
public sealed record GuidePicture(string File, int Width, int Height);
