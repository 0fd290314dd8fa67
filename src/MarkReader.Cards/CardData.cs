using System.Text.Json;

namespace MarkReader.Cards;

/// <summary>Reads card kinds and marker dictionaries from their data files (schema: calibration/README.md).</summary>
internal static class CardData
{
    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web);

    public static IReadOnlyList<CardKind> ReadAll()
    {
        Dictionary<string, DictionaryFile> dictionaries = Dictionaries();
        CardKind[] kinds = [.. Resources("cards").Select(name => Build(Read<CardFile>(name), dictionaries)).OrderBy(k => k.OuterSide)];
        int[] ids = [.. kinds.SelectMany(k => k.Markers.Select(m => m.Id)), .. ReadBoard().Markers.Select(m => m.Id)];
        return ids.Distinct().Count() == ids.Length
            ? kinds
            : throw new InvalidDataException("A marker id stands on two prints; ids must tell the kind.");
    }

    public static CalibrationBoard ReadBoard()
    {
        BoardFile file = Read<BoardFile>(Resources("boards").Single());
        DictionaryFile dictionary = Dictionaries()[file.Dictionary];
        return new(
            file.Name,
            file.Width,
            file.Height,
            [.. Enumerable.Range(0, file.Columns * file.Rows).Select(i => new CardMarker(
                file.FirstId + i,
                new(
                    file.Middle.U + (((i % file.Columns) - ((file.Columns - 1) / 2.0)) * file.Pitch),
                    file.Middle.V - (((i / file.Columns) - ((file.Rows - 1) / 2.0)) * file.Pitch)),
                file.MarkerSide,
                new(dictionary.Cells, dictionary.Markers[file.FirstId + i])))],
            [.. file.Rulers.Select(Build)],
            [.. file.Labels.Select(Build)]);
    }

    private static Dictionary<string, DictionaryFile> Dictionaries() => Resources("dictionaries").Select(name => Read<DictionaryFile>(name)).ToDictionary(d => d.Name);

    private static CardRuler Build(RulerEntry r) => new(new(r.FromU, r.FromV), new(r.ToU, r.ToV), r.Step, r.Tick, r.Stroke);

    private static CardLabel Build(LabelEntry l) => new(l.Text, new(l.U, l.V), l.Height, l.TurnDegrees);

    private static CardKind Build(CardFile file, Dictionary<string, DictionaryFile> dictionaries)
    {
        DictionaryFile dictionary = dictionaries[file.Dictionary];
        return new(
            file.Name,
            file.OuterSide,
            file.ZoneSide,
            file.ZoneTicks,
            [.. file.Markers.Select(m => new CardMarker(m.Id, new(m.U, m.V), file.MarkerSide, new(dictionary.Cells, dictionary.Markers[m.Id])))],
            [.. file.Patches.Select(p => new ChessPatch(new(p.U, p.V), p.Columns, p.Rows, file.Square, p.FirstBlack))],
            [.. file.Rulers.Select(Build)],
            new(new(file.Arrow.U, file.Arrow.V), file.Arrow.Height, file.Arrow.Width),
            [.. file.Labels.Select(Build)]);
    }

    private static IEnumerable<string> Resources(string folder) =>
        typeof(CardData).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(folder + "/", StringComparison.Ordinal));

    private static T Read<T>(string resource)
    {
        using Stream stream = typeof(CardData).Assembly.GetManifestResourceStream(resource)!;
        return JsonSerializer.Deserialize<T>(stream, s_json) ?? throw new InvalidDataException($"{resource} is empty.");
    }

    private sealed record DictionaryFile(string Name, int Cells, IReadOnlyDictionary<int, string[]> Markers);

    private sealed record CardFile(
        string Name, string Dictionary, double OuterSide, double ZoneSide, ZoneTicks ZoneTicks, double MarkerSide, double Square,
        MarkerEntry[] Markers, PatchEntry[] Patches, RulerEntry[] Rulers, ArrowEntry Arrow, LabelEntry[] Labels);

    private sealed record BoardFile(
        string Name, string Dictionary, double Width, double Height, int FirstId, int Columns, int Rows, double Pitch, double MarkerSide,
        PlaceEntry Middle, RulerEntry[] Rulers, LabelEntry[] Labels);

    private sealed record PlaceEntry(double U, double V);

    private sealed record MarkerEntry(int Id, double U, double V);

    private sealed record PatchEntry(double U, double V, int Columns, int Rows, bool FirstBlack);

    private sealed record RulerEntry(double FromU, double FromV, double ToU, double ToV, double Step, double Tick, double Stroke);

    private sealed record ArrowEntry(double U, double V, double Height, double Width);

    private sealed record LabelEntry(string Text, double U, double V, double Height, double TurnDegrees);
}
