namespace MarkReader.Application.Inputs;

/// <summary>What a file that was sent is called.</summary>
public static class FileLabel
{
    private const int Longest = 80;

    /// <summary>A file's name as it can be shown and kept.</summary>
    public static string Shown(string file)
    {
        string shown = string.Concat(Path.GetFileName(file).Where(c => !char.IsControl(c) && !char.IsSurrogate(c)));
        return shown.Length > Longest ? shown[..Longest] : shown;
    }
}
