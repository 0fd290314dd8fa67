using System.Globalization;
using System.Text;
using MarkReader.Application.History;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Advising;
using MarkReader.Application.Tests.Storage;
using MarkReader.Application.Tests.Support;
using MarkReader.Application.VisitLog;

namespace MarkReader.Application.Tests.History;

/// <summary>A machine whose visits are kept as events that a person typed, each at a time of its own.</summary>
internal sealed class VisitedMachine : IDisposable
{
    private readonly TemporaryFolder _temporary = new();
    private readonly VisitDesk _desk;

    public VisitedMachine(string machine)
    {
        Database database = _temporary.Open();
        Machines = new(database, Clock);
        Visits = new(database, Clock);
        _desk = new(Visits, TemporaryFolder.Photos(database), new(database, TimeProvider.System));
        History = new(Machines, Visits, Clock);
        Id = Machines.Add(MachineFile.Read(Encoding.UTF8.GetBytes(machine)).ValueOrThrow()).ValueOrThrow().Entry.Id;
    }

    /// <summary>Square targets: the slope of the marks is that of the beam.</summary>
    public static string Document(string more = "") => $$"""{ "name": "by the door", {{more}} "legs": {{VisitTexts.Legs.Replace("\"incidenceDegrees\": 45", "\"incidenceDegrees\": 0", StringComparison.Ordinal)}} }""";

    public SetClock Clock { get; } = new();

    public MachineStore Machines { get; }

    public VisitStore Visits { get; }

    public HistoryDesk History { get; }

    public long Id { get; }

    public MachineHistory Now => History.Of(Id).ValueOrThrow();

    /// <summary>A visit so many days after the first.</summary>
    public long Visit(int day, params string[][] events)
    {
        Clock.Now = new DateTimeOffset(2026, 1, 5, 9, 0, 0, TimeSpan.Zero).AddDays(day);
        long id = Visits.Begin(new(Id, "")).ValueOrThrow().Entry.Id;
        foreach (string e in events.SelectMany(e => e))
            _desk.Append(id, Encoding.UTF8.GetBytes(e), Guid.NewGuid().ToString("N"), ExpectedVersion.Any).ValueOrThrow();
        return id;
    }

    /// <summary>The near and the far mark of a beam with this slope, mrad, read off to 0.05 mm.</summary>
    public static string[] Marks(string leg, double slopeU, double slopeV) => [.. (leg == "1" ? (double[])[80, 480] : [60, 560]).Select(path => string.Create(
        CultureInfo.InvariantCulture, $$"""{ "kind": "mark", "leg": "{{leg}}", "path": {{path}}, "u": {{0.3 + (slopeU * path / 1000)}}, "v": {{-0.1 + (slopeV * path / 1000)}}, "uncertainty": 0.05 }"""))];

    /// <summary>A sixteenth of a turn moves the beam by 0.7 mm/16 over 30 mm, twice: 2.92 mrad.</summary>
    public static string[] Turn(string leg, double turns) => [string.Create(CultureInfo.InvariantCulture, $$"""{ "kind": "turn", "leg": "{{leg}}", "screw": "A", "turns": {{turns}} }""")];

    public void Dispose() => _temporary.Dispose();
}
