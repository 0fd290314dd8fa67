namespace MarkReader.Service.Texts;

/// <summary>Names the texts that scripts say on more than one page: ScriptTexts.resx.</summary>
internal sealed class ScriptTexts;
