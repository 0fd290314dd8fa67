using System.Text.Json;
using Dapper;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;
using static MarkReader.Quantities.Texts<MarkReader.Application.Texts.AdviceTexts>;

namespace MarkReader.Application.Machines;

/// <summary>Keeps machines as their documents.</summary>
public sealed class MachineStore(Database database, TimeProvider clock)
{
    /// <summary>The most machines that are kept.</summary>
    public const int Most = 1000;

    private const string Columns = "id, name, version, added_at AS AddedAt, changed_at AS ChangedAt";

    private readonly KeptOnce<KeptMachine> _once = new(database, "machines", Most, Full, (connection, id) => Find(connection, id)!);

    /// <summary>Keeps a new machine.</summary>
    /// <param name="request">The request's key; one that is repeated gives the machine that it added. Null: every call adds one.</param>
    public Outcome<KeptMachine> Add(MachineDocument document, RequestKey? request = null) => _once.Add(request, connection => new AddedRow(connection.QuerySingle<long>(
        "INSERT INTO machines (name, document, version, added_at, changed_at, request_key, request_digest) VALUES (@Name, @Text, 1, @time, @time, @Key, @Digest) RETURNING id",
        new { document.Name, document.Text, request?.Key, request?.Digest, time = Moment.ToText(clock.GetUtcNow()) })));

    /// <summary>The newest machine with the same document, whatever its blanks and line ends.</summary>
    /// <param name="except">A machine that is not looked at; null: none.</param>
    public Outcome<SameMachine> FindSame(MachineDocument document, long? except = null) => database.Run<SameMachine>(connection =>
    {
        using JsonDocument sought = JsonDocument.Parse(document.Text);
        foreach ((long id, string text) in connection.Query<(long, string)>(
            "SELECT id, document FROM machines WHERE name IS @Name AND id IS NOT @except ORDER BY id DESC", new { document.Name, except }, buffered: false))
        {
            using JsonDocument kept = JsonDocument.Parse(text);
            if (JsonElement.DeepEquals(kept.RootElement, sought.RootElement))
                return new SameMachine(Find(connection, id)!.Entry);
        }

        return new SameMachine(null);
    });

    /// <summary>Says that the same document is kept already.</summary>
    public static Warning SameAs(MachineEntry same) => new("machineKnown", Say("warning.machineKnown", same.Id, same.Name));

    /// <summary>The machine with this id.</summary>
    public Outcome<KeptMachine> Find(long id) => database.Run<KeptMachine>(connection => Find(connection, id) is { } machine ? machine : MachineFailures.NotKept(id));

    /// <summary>The machines, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<MachineEntry>> List(long? before, int limit) => database.Run<Page<MachineEntry>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        return order.PageOf(connection.Query<Row>($"SELECT {Columns} FROM machines WHERE {PageOrder.Clause}", order).Select(row => row.ToEntry()), machine => machine.Id);
    });

    /// <summary>As <see cref="List"/>, with what a person chooses by.</summary>
    public Outcome<Page<MachineOverview>> Overview(long? before, int limit) => database.Run<Page<MachineOverview>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        IEnumerable<MachineOverview> machines = connection.Query<Row, string, string?, MachineOverview>(
            $"""
            SELECT {Columns}, document, (SELECT max(begun_at) FROM visits WHERE machine_id = machines.id) AS LastVisitAt
            FROM machines WHERE {PageOrder.Clause}
            """,
            (row, document, last) =>
            {
                DateTimeOffset? visited = last is null ? null : Moment.Parse(last);
                return new(row.ToEntry(), BedSize.Of(document), visited) { Reminder = VisitReminder.Of(document, visited) };
            },
            order,
            splitOn: "document,LastVisitAt");
        return order.PageOf(machines, machine => machine.Entry.Id);
    });

    /// <summary>Puts another document in a machine's place, when its version is the expected one.</summary>
    public Outcome<KeptMachine> Replace(long id, MachineDocument document, ExpectedVersion expected) => Change(id, expected, (connection, _) =>
    {
        connection.Execute(
            "UPDATE machines SET name = @Name, document = @Text, version = version + 1, changed_at = @time WHERE id = @id",
            new { id, document.Name, document.Text, time = Moment.ToText(clock.GetUtcNow()) });
        return Find(connection, id)!;
    });

    /// <summary>Removes a machine, when its version is the expected one.</summary>
    public Outcome<KeptMachine> Remove(long id, ExpectedVersion expected) => Change(id, expected, (connection, machine) =>
    {
        connection.Execute("DELETE FROM machines WHERE id = @id", new { id });
        return machine;
    });

    private Outcome<KeptMachine> Change(long id, ExpectedVersion expected, Func<SqliteConnection, KeptMachine, KeptMachine> change) =>
        new VersionedChange<KeptMachine>(connection => Find(connection, id), () => MachineFailures.NotKept(id), kept => kept.Entry.Version, () => MachineTexts.Say("machineStore.machine", id)).Run(database, expected, (connection, kept) => change(connection, kept));

    private static Failure Full() => new(MachineFailures.TooMany, MachineTexts.Word("machineStore.machinesKeptAlready", Most), MachineTexts.Get("machineStore.deleteThoseThatNoLonger"));

    internal static KeptMachine? Find(SqliteConnection connection, long id) => connection.Query<Row, string, KeptMachine>(
        $"SELECT {Columns}, document FROM machines WHERE id = @id", (row, document) => new(row.ToEntry(), document), new { id }, splitOn: "document").FirstOrDefault();

    // Columns of the table only: of an expression the type is not known while there are no rows.
    private sealed record Row(long Id, string? Name, long Version, string AddedAt, string ChangedAt)
    {
        public MachineEntry ToEntry() => new(Id, Name ?? MachineTexts.Say("machineStore.machine", Id), Version, Moment.Parse(AddedAt), Moment.Parse(ChangedAt));
    }
}
