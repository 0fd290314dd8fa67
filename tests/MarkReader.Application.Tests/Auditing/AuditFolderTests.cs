using MarkReader.Application.Auditing;
using MarkReader.Application.Tests.Support;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Auditing;

public sealed class AuditFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("audit-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Photos_are_compared_with_their_truth_files()
    {
        byte[] photo = LegScene.Photo(11, (-3, 2), (4, -1));
        Put("a-good.jpg", photo, """{"marks": [{"u": -3, "v": 2}, {"u": 4, "v": -1}], "scene": {"kind": "tidy"}}""");
        Put("b-moved.jpg", photo, """{"marks": [{"u": -3, "v": 2.1}, {"u": 9, "v": 9}]}""");
        Put("c-refused.jpg", "no photo"u8.ToArray(), """{"marks": [{"u": 0, "v": 0}]}""");
        Put("d-refusal.png", "no photo"u8.ToArray(), """{"marks": [], "expected": {"error": "PHOTO_FORMAT"}}""");
        Put("e-other.png", "no photo"u8.ToArray(), """{"marks": [], "expected": {"error": "NO_CARD"}}""");
        Put("f-bad.jpg", photo, "{");
        File.WriteAllText(Path.Combine(_folder, "g-alone.truth.json"), """{"marks": []}""");
        File.WriteAllBytes(Path.Combine(_folder, "h-without-truth.jpg"), photo);

        Audit audit = AuditFolder.Run(_folder).ValueOrThrow();

        Assert.Equal(
            ["a-good.jpg", "b-moved.jpg", "c-refused.jpg", "d-refusal.png", "e-other.png", "f-bad.truth.json", "g-alone.truth.json"],
            audit.Photos.Select(p => p.Name));
        Assert.Equal([true, false, false, true, false, false, false], audit.Photos.Select(p => p.AsExpected));
        Assert.Equal([2, 1, 0, 0, 0, 0, 0], audit.Photos.Select(p => p.Found.Count));
        Assert.Equal([0, 1, 1, 0, 0, 0, 0], audit.Photos.Select(p => p.Missed));
        Assert.Equal([0, 1, 0, 0, 0, 0, 0], audit.Photos.Select(p => p.False));
        Assert.Equal("TRUTH_UNREADABLE", audit.Photos[5].Refusal!.Code.Name);
        Assert.Equal("TRUTH_WITHOUT_PHOTO", audit.Photos[6].Refusal!.Code.Name);

        AuditSummary summary = audit.Summary;
        Assert.Equal((7, 2, 2), (summary.Photos, summary.AsExpected, summary.BadFiles));
        Assert.Equal((5, 3, 2, 1), (summary.Truths, summary.Found, summary.Missed, summary.False));
        Assert.Equal(0.1, summary.Max!.Value, 0.02);
        Assert.Equal(0.1 / Math.Sqrt(3), summary.Rms!.Value, 0.02);
        Assert.InRange(summary.Median!.Value, 0, 0.02);
        Assert.InRange(summary.StatedRms!.Value, 0.0001, 0.05);

        Assert.Equal(["-", "tidy"], audit.Kinds.Select(k => k.Kind));
        Assert.Equal([6, 1], audit.Kinds.Select(k => k.Photos));
        Assert.Equal([1, 2], audit.Kinds.Select(k => k.Found));
        Assert.Equal(1, audit.Kinds[1].FoundRate);
    }

    [Fact]
    public void A_mark_stated_where_a_refusal_is_right_is_a_false_one()
    {
        Put("a.jpg", LegScene.Photo(12, (-3, 2)), """{"marks": [{"u": -3, "v": 2}], "expected": {"error": "CARD_MIRRORED"}}""");
        Audit audit = AuditFolder.Run(_folder).ValueOrThrow();
        AuditedPhoto photo = Assert.Single(audit.Photos);
        Assert.Equal((0, 1, 0, false), (photo.Found.Count, photo.False, photo.Missed, photo.AsExpected));
        Assert.Null(audit.Summary.FalseRate);
    }

    [Fact]
    public void Photos_measured_at_the_same_time_come_in_order_and_are_counted_one_by_one()
    {
        string[] names = [.. Enumerable.Range(0, 60).Select(i => $"p{i:00}.jpg")];
        foreach (string name in names)
            Put(name, "no photo"u8.ToArray(), """{"marks": [], "expected": {"error": "PHOTO_FORMAT"}}""");
        List<(int Done, int All)> told = [];

        Audit audit = AuditFolder.Run(_folder, (done, all) => told.Add((done, all))).ValueOrThrow();

        Assert.Equal(names, audit.Photos.Select(p => p.Name));
        Assert.Equal(60, audit.Summary.AsExpected);
        Assert.Equal(Enumerable.Range(1, 60).Select(i => (i, 60)), told);
    }

    [Fact]
    public void A_folder_that_is_missing_or_has_no_truth_is_refused()
    {
        Refused("AUDIT_FOLDER_MISSING", Path.Combine(_folder, "nowhere"));
        Refused("NOTHING_TO_AUDIT", _folder);
    }

    private static void Refused(string code, string folder)
    {
        Assert.False(AuditFolder.Run(folder).TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    private void Put(string name, byte[] photo, string truth)
    {
        File.WriteAllBytes(Path.Combine(_folder, name), photo);
        File.WriteAllText(Path.Combine(_folder, Path.ChangeExtension(name, null) + TruthFile.Ending), truth);
    }
}
