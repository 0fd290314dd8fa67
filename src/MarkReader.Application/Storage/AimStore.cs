using System.Text.Json;
using System.Text.Json.Serialization;
using Dapper;
using MarkReader.Application.Aiming;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;
using Microsoft.Data.Sqlite;

namespace MarkReader.Application.Storage;

/// <summary>Keeps the aims that were worked out, and the refusals, with everything that they were worked out from.</summary>
public sealed class AimStore(Database database, PhotoStore photos, TimeProvider clock)
{
    private const string Columns =
        "id, near_photo_id AS NearPhoto, far_photo_id AS FarPhoto, inputs, program_version AS ProgramVersion, found_at AS FoundAt, report, refusal, overlay, overlay_crop AS OverlayCrop";

    private static readonly JsonSerializerOptions s_json = new(JsonSerializerOptions.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    /// <summary>Keeps an aim. The same inputs under the same version of the program are kept once, with the latest answer.</summary>
    public Outcome<AimReceipt> Keep(NewAim aim) => database.Run<AimReceipt>(connection =>
    {
        var values = new
        {
            aim.Inputs.NearPhoto,
            aim.Inputs.FarPhoto,
            Inputs = JsonSerializer.Serialize(InputsText.Of(aim.Inputs), s_json),
            aim.ProgramVersion,
            Time = Moment.ToText(clock.GetUtcNow()),
            Report = aim.Answer.ReportText,
            Refusal = aim.Answer.RefusalJson,
            Overlay = aim.Overlay?.Photo,
            OverlayCrop = aim.Overlay?.Crop,
        };
        using SqliteTransaction transaction = connection.BeginTransaction();
        long? earlier = connection.QueryFirstOrDefault<long?>(
            "SELECT id FROM aims WHERE near_photo_id = @NearPhoto AND far_photo_id = @FarPhoto AND inputs = @Inputs AND program_version = @ProgramVersion",
            values,
            transaction);
        long id = connection.QuerySingle<long>(
            """
            INSERT INTO aims (near_photo_id, far_photo_id, inputs, program_version, found_at, report, refusal, overlay, overlay_crop)
            VALUES (@NearPhoto, @FarPhoto, @Inputs, @ProgramVersion, @Time, @Report, @Refusal, @Overlay, @OverlayCrop)
            ON CONFLICT DO UPDATE SET report = @Report, refusal = @Refusal, overlay = @Overlay, overlay_crop = @OverlayCrop
            RETURNING id
            """,
            values,
            transaction);
        KeptAim kept = Find(connection, id)!;
        transaction.Commit();
        return new AimReceipt(kept, earlier is null);
    });

    /// <summary>The aim with this id.</summary>
    public Outcome<KeptAim> Find(long id) => database.Run<KeptAim>(connection =>
        Find(connection, id) is { } aim ? aim : StorageFailures.NoAim(id));

    /// <summary>The aims, newest first, from just before the id <paramref name="before"/> (null: from the newest) on.</summary>
    public Outcome<Page<KeptAim>> List(long? before, int limit) => database.Run<Page<KeptAim>>(connection =>
    {
        PageOrder order = PageOrder.Of(before, limit);
        return order.PageOf(connection.Query<Row>($"SELECT {Columns} FROM aims WHERE {PageOrder.Clause}", order).Select(row => row.ToAim()), aim => aim.Id);
    });

    /// <summary>Removes an aim, and those of its photos to which no other aim refers.</summary>
    public Outcome<KeptAim> Delete(long id)
    {
        Outcome<KeptAim> removed = database.Run<KeptAim>(connection =>
        {
            if (Find(connection, id) is not { } aim)
                return StorageFailures.NoAim(id);
            connection.Execute("DELETE FROM aims WHERE id = @id", new { id });
            return aim;
        });
        if (!removed.TryGet(out KeptAim? gone, out _))
            return removed;
        foreach (string photo in new HashSet<string> { gone.Aim.Inputs.NearPhoto, gone.Aim.Inputs.FarPhoto })
        {
            if (!photos.Delete(photo).TryGet(out _, out Failure? failure) && failure.Code != StorageFailures.PhotoInUse)
                return failure;
        }
        return gone;
    }

    private static KeptAim? Find(SqliteConnection connection, long id) =>
        connection.QueryFirstOrDefault<Row>($"SELECT {Columns} FROM aims WHERE id = @id", new { id })?.ToAim();

    // What is not given is not written, so that results of earlier versions and later ones with the same inputs read alike.
    private sealed record InputsText(
        FirstMark? First,
        LegInput Leg,
        [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] CardInput? Card = null,
        [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PixelPoint? NearAt = null,
        [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PixelPoint? FarAt = null,
        [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Cameras = null)
    {
        public static InputsText Of(AimInputs inputs) => new(inputs.First, inputs.Leg, inputs.Card, inputs.NearAt, inputs.FarAt, inputs.Cameras);
    }

    private sealed record Row(
        long Id, string NearPhoto, string FarPhoto, string Inputs, string ProgramVersion, string FoundAt, string? Report, string? Refusal, string? Overlay, string? OverlayCrop)
    {
        public KeptAim ToAim()
        {
            InputsText text = JsonSerializer.Deserialize<InputsText>(Inputs, s_json)!;
            AimInputs inputs = new(NearPhoto, FarPhoto, text.First, text.Leg) { Card = text.Card, NearAt = text.NearAt, FarAt = text.FarAt, Cameras = text.Cameras };
            return new(
                Id,
                Moment.Parse(FoundAt),
                new(inputs, ProgramVersion, KeptAnswer.From(Report, Refusal), Overlay is null ? null : new(Overlay, OverlayCrop!)));
        }
    }
}
