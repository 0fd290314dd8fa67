using System.Globalization;
using System.Text;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Application.Tests.Advising;
using MarkReader.Application.Tests.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Machines;

public sealed class MachineStoreTests : IDisposable
{
    private readonly TemporaryFolder _temporary = new();
    private readonly MachineStore _machines;

    public MachineStoreTests() => _machines = new(_temporary.Open(), TimeProvider.System);

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_machine_comes_back_after_a_restart_as_it_was_kept()
    {
        KeptMachine kept = _machines.Add(Document("press")).ValueOrThrow();
        KeptMachine found = new MachineStore(_temporary.Open(), TimeProvider.System).Find(kept.Entry.Id).ValueOrThrow();
        Assert.Equal(kept, found);
        Assert.Equal((1, "press"), (found.Entry.Version, found.Entry.Name));
        Assert.Equal(Text("press"), found.Text);
    }

    [Fact]
    public void The_list_of_a_new_data_folder_is_empty() => Assert.Empty(_machines.List(null, 20).ValueOrThrow().Items);

    [Fact]
    public void A_machine_without_a_name_is_called_by_its_number()
    {
        KeptMachine kept = _machines.Add(Read(VisitTexts.Machine)).ValueOrThrow();
        Assert.Equal(FormattableString.Invariant($"machine {kept.Entry.Id}"), kept.Entry.Name);
    }

    [Fact]
    public void A_change_counts_the_version_up_and_the_second_one_made_for_the_old_version_is_refused()
    {
        KeptMachine kept = _machines.Add(Document("a")).ValueOrThrow();
        KeptMachine changed = _machines.Replace(kept.Entry.Id, Document("b"), ExpectedVersion.OneOf(1)).ValueOrThrow();
        Assert.Equal((2, "b", kept.Entry.AddedAt), (changed.Entry.Version, changed.Entry.Name, changed.Entry.AddedAt));

        Assert.False(_machines.Replace(kept.Entry.Id, Document("c"), ExpectedVersion.OneOf(1)).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.Changed, failure.Code);
        Assert.False(_machines.Remove(kept.Entry.Id, ExpectedVersion.OneOf()).TryGet(out _, out failure));
        Assert.Equal(StorageFailures.Changed, failure.Code);
        Assert.Equal(changed, _machines.Find(kept.Entry.Id).ValueOrThrow());
        Assert.Equal(3, _machines.Replace(kept.Entry.Id, Document("c"), ExpectedVersion.Any).ValueOrThrow().Entry.Version);
    }

    [Fact]
    public async Task Of_many_changes_at_once_made_for_one_version_one_is_kept()
    {
        long id = _machines.Add(Document("a")).ValueOrThrow().Entry.Id;
        bool[] done = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => Task.Run(
            () => _machines.Replace(id, Document(FormattableString.Invariant($"from {i}")), ExpectedVersion.OneOf(1)).TryGet(out _, out _))));
        Assert.Equal(1, done.Count(d => d));
        Assert.Equal(2, _machines.Find(id).ValueOrThrow().Entry.Version);
    }

    [Fact]
    public void A_removed_machine_is_gone_and_its_number_not_given_again()
    {
        long id = _machines.Add(Document("a")).ValueOrThrow().Entry.Id;
        Assert.Equal("a", _machines.Remove(id, ExpectedVersion.OneOf(1)).ValueOrThrow().Entry.Name);
        Assert.False(_machines.Find(id).TryGet(out _, out Failure? failure));
        Assert.Equal(StorageFailures.NotKept, failure.Code);
        Assert.False(_machines.Replace(id, Document("b"), ExpectedVersion.Any).TryGet(out _, out failure));
        Assert.Equal(StorageFailures.NotKept, failure.Code);
        Assert.NotEqual(id, _machines.Add(Document("a")).ValueOrThrow().Entry.Id);
    }

    [Fact]
    public void Pages_together_give_every_machine_once_and_the_newest_first()
    {
        List<long> kept = [.. Enumerable.Range(0, 5).Select(_ => _machines.Add(Document("a")).ValueOrThrow().Entry.Id)];
        List<long> listed = [];
        long? before = null;
        do
        {
            Page<MachineEntry> page = _machines.List(before, 2).ValueOrThrow();
            listed.AddRange(page.Items.Select(m => m.Id));
            before = page.Next is null ? null : long.Parse(page.Next, CultureInfo.InvariantCulture);
        }
        while (before is not null);
        kept.Reverse();
        Assert.Equal(kept, listed);
        Assert.Single(_machines.List(null, -5).ValueOrThrow().Items);
    }

    [Fact]
    public void The_overview_says_how_large_each_bed_is_and_when_it_was_visited_last()
    {
        Assert.Empty(_machines.Overview(null, 10).ValueOrThrow().Items);
        long without = _machines.Add(Document("no bed")).ValueOrThrow().Entry.Id;
        long visited = _machines.Add(Read(VisitTexts.Machine)).ValueOrThrow().Entry.Id;
        VisitStore visits = new(_temporary.Open(), TimeProvider.System);
        _ = visits.Begin(new(visited, "")).ValueOrThrow();
        DateTimeOffset last = visits.Begin(new(visited, "")).ValueOrThrow().Entry.BegunAt;
        Page<MachineOverview> page = _machines.Overview(null, 10).ValueOrThrow();
        Assert.Equal([(visited, last), (without, null)], page.Items.Select(m => (m.Entry.Id, m.LastVisitAt)));
        Assert.Equal((500, 400), (page.Items[0].Bed!.X.Millimetres, page.Items[0].Bed!.Y.Millimetres));
        Assert.Null(page.Items[1].Bed);
    }

    [Fact]
    public void No_more_machines_are_kept_than_there_may_be()
    {
        MachineDocument document = Document("a");
        KeptMachine first = _machines.Add(document).ValueOrThrow();
        // Written as one statement: a thousand flushes to the disk would take minutes on a slow one.
        _temporary.Execute("INSERT INTO machines (name, document, version, added_at, changed_at) SELECT name, document, version, added_at, changed_at FROM machines, (WITH RECURSIVE n (i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < 1000) SELECT i FROM n)");
        Assert.False(_machines.Add(document).TryGet(out _, out Failure? failure));
        Assert.Equal(MachineFailures.TooMany, failure.Code);
        _machines.Remove(first.Entry.Id, ExpectedVersion.Any).ValueOrThrow();
        Assert.True(_machines.Add(document).TryGet(out _, out _));
        Assert.Equal(100, _machines.List(null, 1000).ValueOrThrow().Items.Count);
    }

    private static MachineDocument Document(string name) => Read(Text(name));

    private static string Text(string name) => $$"""{ "name": "{{name}}", "legs": {{VisitTexts.Legs}} }""";

    private static MachineDocument Read(string text) => MachineFile.Read(Encoding.UTF8.GetBytes(text)).ValueOrThrow();
}
