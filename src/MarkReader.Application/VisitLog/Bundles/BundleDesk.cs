using System.Security.Cryptography;
using System.Text.Json;
using Dapper;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>Hands whole visits to other installations, and takes theirs in.</summary>
public sealed class BundleDesk(Database database, VisitStore visits, PhotoStore photos, PhotoDesk photoDesk)
{
    /// <summary>Writes a visit that is kept, with its photos.</summary>
    /// <param name="to">Written from its beginning; photos are held in memory one at a time.</param>
    public Outcome<KeptVisit> Write(long id, Stream to)
    {
        if (!visits.Find(id).TryGet(out KeptVisit? visit, out Failure? failure) || !Origin(id).TryGet(out string? origin, out failure))
            return failure;
        List<BundledPhoto> measured = [];
        long total = 0;
        foreach (string photo in visit.All.Select(e => e.Photo).OfType<string>().Distinct())
        {
            if (!photos.Find(photo).TryGet(out KeptPhoto? kept, out failure))
                return failure;
            total += kept.Length;
            measured.Add(new(photo, Measurement(photo)));
        }

        if (total > BundleLimits.MostBytes - BundleLimits.MostVisitBytes || measured.Count > BundleLimits.MostPhotos)
            return BundleFailures.Large(VisitLogTexts.Get("bundleDesk.visitPhotosMoreThanOne"));
        failure = null;
        BundleWriter.Write(to, origin, visit, measured, Originals(measured, wrong => failure = wrong));
        return failure is null ? visit : failure;
    }

    /// <summary>Keeps the visit of a file with its own times; one that is here already, at this or a later version, is not kept again.</summary>
    public Outcome<BundleReceipt> Import(VisitBundle bundle)
    {
        BundledVisit visit = bundle.Visit;
        if (!Find(visit).TryGet(out Known? known, out Failure? failure))
            return failure;
        if (known.Visit is { } here)
            return new BundleReceipt(here, false);
        foreach (BundledPhoto photo in visit.Photos)
        {
            if (!bundle.Photo(photo.Id).TryGet(out byte[]? bytes, out failure) || !photoDesk.Keep(bytes).TryGet(out _, out failure))
                return failure;
            // What was measured here stays as it is.
            if (photo.Measurement is { } measurement && !photos.FindMeasurement(photo.Id).TryGet(out _, out _)
                && !photos.KeepMeasurement(photo.Id, measurement.ProgramVersion, new KeptAnswer.Report(measurement.Report)).TryGet(out _, out failure))
                return failure;
        }

        return database.Run<BundleReceipt>(connection =>
        {
            using SqliteTransaction transaction = connection.BeginTransaction();
            // Again, now that no one else can keep it meanwhile.
            if (Find(connection, visit) is { } meanwhile)
                return new BundleReceipt(meanwhile, false);
            if (connection.QuerySingle<int>("SELECT count(*) FROM visits") >= VisitStore.Most)
                return VisitLogFailures.Full();
            KeptVisit kept = VisitStore.Find(connection, Insert(connection, visit))!;
            transaction.Commit();
            return new BundleReceipt(kept, true);
        });
    }

    private static long Insert(SqliteConnection connection, BundledVisit visit)
    {
        long id = connection.QuerySingle<long>(
            """
            INSERT INTO visits (machine_id, machine_name, machine, note, version, begun_at, changed_at, done_by, practice)
            VALUES ((SELECT id FROM machines WHERE document = @Machine ORDER BY id LIMIT 1), @MachineName, @Machine, @Note, @Version, @begun, @changed, @DoneBy, @practice) RETURNING id
            """,
            new
            {
                visit.Machine,
                visit.MachineName,
                visit.Note,
                visit.Version,
                visit.DoneBy,
                begun = Moment.ToText(visit.BegunAt),
                changed = Moment.ToText(visit.ChangedAt),
                practice = visit.Practice is { } practice ? JsonSerializer.Serialize(practice, ReportJson.Options) : null,
            });
        connection.Execute("INSERT INTO visit_origins (visit_id, origin) VALUES (@id, @Origin)", new { id, visit.Origin });
        foreach (KeptEvent e in visit.All)
        {
            connection.Execute(
                """
                INSERT INTO visit_events (visit_id, number, event, photo_id, request_key, request_digest, added_at, added_version, taken_back_at, taken_back_version)
                VALUES (@id, @Number, @Text, @Photo, @Key, @Digest, @added, @AddedVersion, @taken, @takenVersion)
                """,
                new
                {
                    id,
                    e.Number,
                    e.Text,
                    e.Photo,
                    e.Request.Key,
                    e.Request.Digest,
                    added = Moment.ToText(e.AddedAt),
                    e.AddedVersion,
                    taken = e.TakenBack is { } back ? Moment.ToText(back.At) : null,
                    takenVersion = e.TakenBack?.Version,
                });
        }

        return id;
    }

    private Outcome<Known> Find(BundledVisit visit) => database.Run<Known>(connection => new Known(Find(connection, visit)));

    private static KeptVisit? Find(SqliteConnection connection, BundledVisit visit) =>
        connection.Query<long>("SELECT visit_id FROM visit_origins WHERE origin = @Origin ORDER BY visit_id", new { visit.Origin }).ToList()
            .Select(id => VisitStore.Find(connection, id)!).FirstOrDefault(kept => Holds(kept, visit));

    // A visit here that has gone on has all that the file has.
    private static bool Holds(KeptVisit kept, BundledVisit visit) =>
        kept.Machine == visit.Machine && kept.All.Count >= visit.All.Count && visit.All.Zip(kept.All).All(pair =>
            pair.First with { TakenBack = null } == pair.Second with { TakenBack = null } && (pair.First.TakenBack ?? pair.Second.TakenBack) == pair.Second.TakenBack);

    // A name for the visit that no other visit has; the first that is given stays.
    private Outcome<string> Origin(long id) => database.Run<string>(connection => connection.QuerySingle<string>(
        "INSERT INTO visit_origins (visit_id, origin) VALUES (@id, @origin) ON CONFLICT DO UPDATE SET origin = visit_origins.origin RETURNING origin",
        new { id, origin = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16)) }));

    private BundledMeasurement? Measurement(string photo) =>
        photos.FindMeasurement(photo).TryGet(out KeptMeasurement? measurement, out _) && measurement.Answer is KeptAnswer.Report report ? new(measurement.ProgramVersion, report.Json) : null;

    private IEnumerable<Original> Originals(List<BundledPhoto> wanted, Action<Failure> refuse)
    {
        foreach (BundledPhoto photo in wanted)
        {
            if (!photos.Read(photo.Id).TryGet(out Original? original, out Failure? failure))
            {
                refuse(failure);
                yield break;
            }

            yield return original;
        }
    }

    private sealed record Known(KeptVisit? Visit);
}

/// <summary>A visit that was taken in.</summary>
/// <param name="IsNew">False when it was here already.</param>
public sealed record BundleReceipt(KeptVisit Visit, bool IsNew);
