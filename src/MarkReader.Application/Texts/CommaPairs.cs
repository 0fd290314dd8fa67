using System.Text.RegularExpressions;

namespace MarkReader.Application.Texts;

/// <summary>Numbers with a decimal comma in a sentence: a semicolon keeps them apart where the sentence has a comma.</summary>
internal static partial class CommaPairs
{
    /// <summary>"u 0,12, v 0,34 mm" as "u 0,12; v 0,34 mm"; a sentence without decimal commas stays as it is.</summary>
    public static string Apart(string sentence) => Between().Replace(sentence, ";");

    // Behind decimals, or before a coordinate that has some.
    [GeneratedRegex(@"(?<=\d,\d+(?:[\u00a0 ](?:mm|in|mrad))?),(?= (?:[xyuv] )?[+−-]?\d)|(?<=\d),(?= [xyuv] [+−-]?\d+,\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Between();
}
