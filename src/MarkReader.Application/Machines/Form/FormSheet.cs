using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>The texts of a form's fields, and what is wrong with them.</summary>
internal sealed class FormSheet(LengthTexts lengths, IReadOnlyDictionary<string, string>? texts = null)
{
    private readonly Dictionary<string, string> _texts = texts is null ? [] : new(texts);
    private readonly Dictionary<string, Failure> _wrong = [];

    public LengthTexts Lengths => lengths;

    public IReadOnlyDictionary<string, string> Texts => _texts;

    public IReadOnlyDictionary<string, Failure> Wrong => _wrong;

    /// <summary>The text of a field without blanks round it; empty when it has none.</summary>
    public string this[string field]
    {
        get => _texts.GetValueOrDefault(field, "").Trim();
        set => _texts[field] = value;
    }

    /// <summary>Keeps the first thing that is wrong with a field.</summary>
    public void Refuse(string field, Failure failure) => _wrong.TryAdd(field, failure);
}
