using System.Text.Json.Nodes;

namespace MarkReader.Application.Machines.Form;

/// <summary>Fields of the form that stand for one thing in a document.</summary>
internal abstract class FormPart(params string[] fields)
{
    public IReadOnlyList<string> Fields => fields;

    /// <summary>Whether leaving it blank is refused.</summary>
    public virtual bool Required => false;

    /// <summary>Puts what the owner has into the fields.</summary>
    /// <param name="owner">The object of the document that holds it.</param>
    public abstract void Show(JsonObject owner, FormSheet sheet);

    /// <summary>Puts the fields into the owner; only called when one of them was changed, or must be given.</summary>
    /// <param name="shown">The fields as they were before the change.</param>
    public abstract void Write(FormSheet sheet, FormSheet shown, JsonObject owner);
}
