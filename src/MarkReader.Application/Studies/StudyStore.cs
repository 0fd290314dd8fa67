using System.Text.Json;
using Dapper;
using MarkReader.Application.Measuring;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Studies;

/// <summary>Keeps studies. <see cref="StudyDesk"/> measures their photos.</summary>
public sealed class StudyStore(Database database, TimeProvider clock)
{
    /// <summary>The most studies that are kept.</summary>
    public const int Most = 200;

    /// <summary>The most photos that one may have, with those that are not used.</summary>
    public const int MostPhotos = 300;

    /// <summary>Largest table of readings, bytes.</summary>
    public const int MostReadings = 256 << 10;

    // Columns of the table only: of an expression the type is not known while there are no rows.
    private const string Columns = "id, kind, name, tolerance, path, people, count, card, version, begun_at AS BegunAt, changed_at AS ChangedAt";

    private readonly KeptOnce<KeptStudy> _once = new(database, "studies", Most, Full, (connection, id) => Find(connection, id)!);

    /// <summary>Begins a study.</summary>
    /// <param name="key">The request's key; one that is repeated gives the study that it began. Null: every call begins one.</param>
    public Outcome<KeptStudy> Begin(StudySetup setup, RequestKey? key = null) => _once.Add(key, connection => new AddedRow(connection.QuerySingle<long>(
        """
        INSERT INTO studies (kind, name, tolerance, path, people, count, card, version, begun_at, changed_at, request_key, request_digest)
        VALUES (@Kind, @Name, @Tolerance, @Path, @People, @Count, @Card, 1, @time, @time, @Key, @Digest) RETURNING id
        """,
        Values(setup, new { time = Now(), key?.Key, key?.Digest }))));

    /// <summary>The study with this id.</summary>
    public Outcome<KeptStudy> Find(long id) => database.Run<KeptStudy>(connection =>
    {
        // One view of both tables.
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        return Find(connection, id) is { } study ? study : StudyInputFailures.NotKept(id);
    });

    /// <summary>The studies, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<StudyEntry>> List(long? before, int limit) => database.Run<Page<StudyEntry>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
        List<Row> rows = [.. connection.Query<Row>($"SELECT {Columns} FROM studies WHERE {PageOrder.Clause}", order)];
        long[] ids = [.. rows.Select(r => r.Id)];
        Dictionary<long, int> photos = connection.Query<long>("SELECT study_id FROM study_photos WHERE study_id IN @ids", new { ids }).CountBy(id => id).ToDictionary();
        HashSet<long> tables = [.. connection.Query<long>("SELECT id FROM studies WHERE id IN @ids AND readings IS NOT NULL", new { ids })];
        return order.PageOf(rows.Select(row => row.ToEntry(photos.GetValueOrDefault(row.Id), tables.Contains(row.Id))), study => study.Id);
    });

    /// <summary>Changes what a study is called and planned as; its kind stays, and so do people of whom there are photos, and the card and tape with which photos were measured.</summary>
    public Outcome<KeptStudy> Describe(long id, StudySetup setup, ExpectedVersion expected) => Change(id, expected, (connection, study) =>
    {
        if (setup.Kind != study.Setup.Kind)
            return new Failure(StudyInputFailures.Conflict, KeptStudyTexts.Get("study.kind"), KeptStudyTexts.Get("study.kindHint"));
        if (study.Photos.Select(p => p.Person).FirstOrDefault(p => p.Length > 0 && !setup.People.Contains(p)) is { } left)
            return new Failure(StudyInputFailures.Conflict, KeptStudyTexts.Word("study.personHasPhotos", left), KeptStudyTexts.Get("study.personHasPhotosHint"));
        if (setup.Card != study.Setup.Card && study.Photos.Any(p => p.Marks is not null))
            return new Failure(StudyInputFailures.Conflict, KeptStudyTexts.Get("study.cardHasPhotos"), KeptStudyTexts.Get("study.cardHasPhotosHint"));
        connection.Execute("UPDATE studies SET name = @Name, tolerance = @Tolerance, path = @Path, people = @People, count = @Count, card = @Card WHERE id = @id", Values(setup, new { id }));
        Touch(connection, id);
        return Find(connection, id)!;
    });

    /// <summary>Puts a table of readings in place of photos, or in place of another; null takes it away.</summary>
    public Outcome<KeptStudy> Put(long id, KeptReadings? readings, ExpectedVersion expected) => Change(id, expected, (connection, study) =>
    {
        if (readings is not null && study.Photos.Count > 0)
            return new Failure(StudyInputFailures.Conflict, KeptStudyTexts.Word("readings.besidePhotos", study.Photos.Count), KeptStudyTexts.Get("readings.besidePhotosHint"));
        if (study.Readings == readings)
            return study;
        connection.Execute("UPDATE studies SET readings = @Text, readings_per_photo = @PerPhoto WHERE id = @id", new { id, readings?.Text, PerPhoto = readings?.PerPhoto ?? false });
        Touch(connection, id);
        return Find(connection, id)!;
    });

    /// <summary>Keeps what was measured in a photo, or why it is not used; the same bytes are kept once.</summary>
    internal Outcome<StudyPhotoReceipt> Add(long id, string person, string digest, string file, KeptAnswer answer) => database.Run<StudyPhotoReceipt>(connection =>
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        if (Find(connection, id) is not { } study)
            return StudyInputFailures.NotKept(id);
        if (study.Photos.FirstOrDefault(p => p.Digest == digest) is { } there)
            return there.Person == person ? new StudyPhotoReceipt(study, there.Number, false) : Twice(there);
        if (Full(study, person) is { } full)
            return full;
        int number = study.Photos.Select(p => p.Number).DefaultIfEmpty().Max() + 1;
        connection.Execute(
            "INSERT INTO study_photos (study_id, number, person, digest, file, added_at, marks, refusal) VALUES (@id, @number, @person, @digest, @file, @time, @marks, @refusal)",
            new { id, number, person, digest, file, time = Now(), marks = answer.ReportText, refusal = answer.RefusalJson });
        Touch(connection, id);
        KeptStudy kept = Find(connection, id)!;
        transaction.Commit();
        return new StudyPhotoReceipt(kept, number, true);
    });

    /// <summary>Removes a photo, when the study's version is the expected one.</summary>
    public Outcome<KeptStudy> RemovePhoto(long id, int number, ExpectedVersion expected) => Change(id, expected, (connection, _) =>
    {
        if (connection.Execute("DELETE FROM study_photos WHERE study_id = @id AND number = @number", new { id, number }) == 0)
            return new Failure(StorageFailures.NotKept, KeptStudyTexts.Word("photo.notKept", id, number), KeptStudyTexts.Get("photo.notKeptHint"));
        Touch(connection, id);
        return Find(connection, id)!;
    });

    /// <summary>Removes a study with its photos' readings, when its version is the expected one.</summary>
    public Outcome<KeptStudy> Remove(long id, ExpectedVersion expected) => Change(id, expected, (connection, study) =>
    {
        connection.Execute("DELETE FROM studies WHERE id = @id", new { id });
        return study;
    });

    /// <summary>Why a study takes no further photo of a person; null when it takes one.</summary>
    internal static Failure? Full(KeptStudy study, string person)
    {
        StudySetup setup = study.Setup;
        if (study.Readings is not null)
            return new(StudyInputFailures.Conflict, KeptStudyTexts.Get("photo.besideReadings"), KeptStudyTexts.Get("photo.besideReadingsHint"));
        if (setup.Kind == StudyKind.Marks ? !setup.People.Contains(person) : person.Length > 0)
            return new(StudyInputFailures.PersonUnknown, KeptStudyTexts.Word("photo.person", Inputs.ListText.Shown(person)), KeptStudyTexts.Get("photo.personHint"));
        if (setup.Kind == StudyKind.Marks && study.UsedOf(person) >= setup.Count)
            return new(StudyInputFailures.PhotosEnough, KeptStudyTexts.Word("photo.enough", setup.Count, person), KeptStudyTexts.Get("photo.enoughHint"));
        return study.Photos.Count < MostPhotos ? null : new(StudyInputFailures.PhotosEnough, KeptStudyTexts.Word("photo.full", MostPhotos), KeptStudyTexts.Get("photo.fullHint"));
    }

    internal static Failure Twice(KeptStudyPhoto there) =>
        new(StudyInputFailures.PhotoTwice, KeptStudyTexts.Word("photo.twice", there.Number, there.Person), KeptStudyTexts.Get("photo.twiceHint"));

    private Outcome<KeptStudy> Change(long id, ExpectedVersion expected, Func<SqliteConnection, KeptStudy, Outcome<KeptStudy>> change) =>
        new VersionedChange<KeptStudy>(connection => Find(connection, id), () => StudyInputFailures.NotKept(id), kept => kept.Entry.Version, () => KeptStudyTexts.Say("study.changed", id)).Run(database, expected, change);

    private void Touch(SqliteConnection connection, long id) =>
        connection.Execute("UPDATE studies SET version = version + 1, changed_at = @time WHERE id = @id", new { id, time = Now() });

    private string Now() => Moment.ToText(clock.GetUtcNow());

    private static Failure Full() => new(StudyInputFailures.TooMany, KeptStudyTexts.Word("study.tooMany", Most), KeptStudyTexts.Get("study.tooManyHint"));

    private static DynamicParameters Values(StudySetup setup, object more)
    {
        DynamicParameters values = new(more);
        values.AddDynamicParams(new
        {
            Kind = StudySetupText.Name(setup.Kind),
            setup.Name,
            Tolerance = setup.Tolerance?.Millimetres,
            Path = setup.Path?.Millimetres,
            People = JsonSerializer.Serialize(setup.People),
            setup.Count,
            Card = setup.Card == CardInput.Nothing ? null : JsonSerializer.Serialize(setup.Card, JsonSerializerOptions.Web),
        });
        return values;
    }

    private static KeptStudy? Find(SqliteConnection connection, long id)
    {
        if (connection.QueryFirstOrDefault<Row>($"SELECT {Columns} FROM studies WHERE id = @id", new { id }) is not { } row)
            return null;
        KeptStudyPhoto[] photos = [.. connection.Query<PhotoRow>(
            "SELECT number, person, digest, file, added_at AS AddedAt, marks, refusal FROM study_photos WHERE study_id = @id ORDER BY number", new { id }).Select(p => p.ToPhoto())];
        (string? text, long perPhoto) = connection.QuerySingle<(string?, long)>("SELECT readings, readings_per_photo FROM studies WHERE id = @id", new { id });
        return new(row.ToEntry(photos.Length, text is not null), photos, text is null ? null : new(text, perPhoto != 0));
    }

    private sealed record Row(long Id, string Kind, string Name, double? Tolerance, double? Path, string People, long Count, string? Card, long Version, string BegunAt, string ChangedAt)
    {
        public StudyEntry ToEntry(int photos, bool hasReadings) => new(Id, Setup, Version, Moment.Parse(BegunAt), Moment.Parse(ChangedAt), photos, hasReadings);

        private StudySetup Setup => new StudySetup(
            Kind == StudySetupText.Name(StudyKind.Marks) ? StudyKind.Marks : StudyKind.Pulses, Name, Mm(Tolerance), Mm(Path), JsonSerializer.Deserialize<string[]>(People)!, (int)Count).Kept(Card is null ? CardInput.Nothing : JsonSerializer.Deserialize<CardInput>(Card, JsonSerializerOptions.Web)!);

        private static Length? Mm(double? value) => value is { } mm ? Length.FromMillimetres(mm) : null;
    }

    private sealed record PhotoRow(long Number, string Person, string Digest, string File, string AddedAt, string? Marks, string? Refusal)
    {
        public KeptStudyPhoto ToPhoto() => new(
            (int)Number,
            Person,
            Digest,
            File,
            Moment.Parse(AddedAt),
            Marks is null ? null : StudyMarksText.Read(Marks),
            Refusal is null ? null : ((KeptAnswer.Refusal)KeptAnswer.From(null, Refusal)).Failure);
    }
}
