using System.Text.Json.Nodes;
using MarkReader.Alignment.Legs;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>An object of the document and its part of the form.</summary>
internal abstract class FormSection(IReadOnlyList<FormPart> parts)
{
    /// <summary>Text of a switch that is on; else it is blank.</summary>
    public const string On = "on";

    public IEnumerable<string> Fields => new[] { Switch }.OfType<string>().Concat(parts.SelectMany(p => p.Fields));

    public void Show(JsonObject machine, FormSheet sheet)
    {
        JsonObject? owner = Find(machine);
        if (Switch is { } field)
            sheet[field] = owner is null ? "" : On;
        foreach (FormPart part in parts)
            part.Show(owner ?? [], sheet);
    }

    public void Write(FormSheet sheet, FormSheet shown, JsonObject machine)
    {
        if (Switch is { } field && sheet[field] != On)
        {
            if (Find(machine) is not null)
                Remove(machine);
            return;
        }

        JsonObject owner = Find(machine) ?? Add(machine);
        foreach (FormPart part in parts)
        {
            if (part.Fields.Any(f => sheet[f] != shown[f]) || (part.Required && part.Fields.Any(f => sheet[f].Length == 0)))
                part.Write(sheet, shown, owner);
        }

        Check(owner, sheet);
    }

    /// <summary>The field that says whether the object is there; null when it always is.</summary>
    protected virtual string? Switch => null;

    protected abstract JsonObject? Find(JsonObject machine);

    protected abstract JsonObject Add(JsonObject machine);

    protected abstract void Remove(JsonObject machine);

    /// <summary>What concerns several fields at once.</summary>
    protected virtual void Check(JsonObject owner, FormSheet sheet)
    {
    }
}

/// <summary>The machine itself.</summary>
internal sealed class WholeSection(params FormPart[] parts) : FormSection(parts)
{
    protected override JsonObject? Find(JsonObject machine) => machine;

    protected override JsonObject Add(JsonObject machine) => machine;

    protected override void Remove(JsonObject machine)
    {
    }
}

/// <summary>An object in a field of the machine.</summary>
internal sealed class FieldSection(string name, params FormPart[] parts) : FormSection(parts)
{
    protected override string? Switch => name;

    protected override JsonObject? Find(JsonObject machine) => machine[name] as JsonObject;

    protected override JsonObject Add(JsonObject machine)
    {
        JsonObject added = [];
        machine[name] = added;
        return added;
    }

    protected override void Remove(JsonObject machine) => JsonTree.Set(machine, name, null);
}

/// <summary>One of the machine's legs.</summary>
/// <param name="leg">Name of its switch, and the beginning of its other fields' names.</param>
internal sealed class LegSection(string leg, string name, params FormPart[] parts) : FormSection(parts)
{
    protected override string? Switch => leg;

    protected override JsonObject? Find(JsonObject machine) => Legs(machine).OfType<JsonObject>().FirstOrDefault(l => JsonTree.Word(l, "name") == name);

    protected override JsonObject Add(JsonObject machine)
    {
        JsonObject added = new() { ["name"] = name };
        if (machine["legs"] is not JsonArray legs)
            machine["legs"] = legs = [];
        legs.Insert(legs.OfType<JsonObject>().Count(l => string.CompareOrdinal(JsonTree.Word(l, "name"), name) < 0), added);
        return added;
    }

    protected override void Remove(JsonObject machine)
    {
        if (Find(machine) is { } there)
            Legs(machine).Remove(there);
    }

    protected override void Check(JsonObject owner, FormSheet sheet)
    {
        if (JsonTree.Number(owner, "nearPath") is not { } near || JsonTree.Number(owner, "farPath") is not { } far || sheet.Wrong.Keys.Any(f => f.StartsWith(leg, StringComparison.Ordinal)))
            return;
        double uncertainty = JsonTree.Number(owner, "pathUncertainty") ?? 1;
        if (LegChecks.NearAndFar(near, far, uncertainty) is { } paths)
            sheet.Refuse(leg + FieldOf(paths.Code, near), paths);
        else if (LegChecks.Pivot(JsonTree.Number(owner, "pivotOffset") ?? 0, JsonTree.Number(owner, "pivotUncertainty") ?? 0, near) is { } pivot)
            sheet.Refuse(leg + (pivot.Code == LegFailures.PivotUncertaintyInvalid ? "-pivotUncertainty" : "-pivotOffset"), pivot);
    }

    private static string FieldOf(FailureCode code, double near)
    {
        if (code == LegFailures.PathUncertaintyInvalid || code == LegFailures.TravelUncertain)
            return "-pathUncertainty";
        bool ofTwo = code == LegFailures.PathsEqual || code == LegFailures.PathsSwapped || code == LegFailures.TravelTooShort;
        return !ofTwo && !(near >= LegChecks.ShortestPath && near <= LegChecks.LongestPath) ? PathsPart.Near : PathsPart.Far;
    }

    private static JsonArray Legs(JsonObject machine) => machine["legs"] as JsonArray ?? [];
}
