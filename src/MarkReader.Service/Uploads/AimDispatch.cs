using MarkReader.Application.Aiming;
using MarkReader.Application.Storage;
using MarkReader.Imaging.Fiducials;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;

namespace MarkReader.Service.Uploads;

/// <summary>What became of an order: a result (or a refusal that is kept), failures by field, or neither when too many wait.</summary>
/// <param name="Receipt">What is kept; null when nothing is.</param>
/// <param name="Failures">What was wrong; empty with a result.</param>
/// <param name="PhotoIds">The ids of the photos that are kept by now, by field.</param>
internal sealed record AimDispatched(AimReceipt? Receipt, IReadOnlyList<FieldFailure> Failures, IReadOnlyDictionary<string, string> PhotoIds);

/// <summary>Carries out the order of a form: keeps its photos and has the aim worked out when it is its turn.</summary>
internal sealed class AimDispatch(PhotoDesk photos, AimDesk aims, MeasuringTurns turns)
{
    /// <summary>The outcome; null when too many are waiting.</summary>
    public async Task<AimDispatched?> RunAsync(UploadForm form, CancellationToken cancellation)
    {
        (AimOrder? order, IReadOnlyList<FieldFailure> wrong) = AimForm.Read(form);
        using IDisposable? turn = await turns.TakeTurnAsync(cancellation);
        if (turn is null)
            return null;
        Dictionary<string, string> kept = [];
        List<FieldFailure> failures = [.. wrong];
        // Photos are kept even when a length is wrong, so that nobody has to choose them again.
        foreach (PhotoSource source in AimForm.Photos(form))
        {
            if (source.File is null)
                kept[source.Field] = source.Id!;
            else if (photos.Keep(await UploadForm.BytesAsync(source.File, cancellation)).TryGet(out PhotoReceipt? receipt, out Failure? failure))
                kept[source.Field] = receipt.Photo.Id;
            else
                failures.Add(new(source.Field, failure));
        }
        if (order is null || failures.Count > 0)
            return new(null, failures, kept);

        string near = kept[order.Near.Field];
        AimInputs inputs = new(near, order.Far is null ? near : kept[order.Far.Field], order.First, order.Leg) { Card = order.Card, NearAt = order.NearAt, FarAt = order.FarAt };
        if (!aims.Find(inputs).TryGet(out AimReceipt? result, out Failure? refused))
            return new(null, [new(FieldOf(refused, order), refused)], kept);
        IReadOnlyList<FieldFailure> refusals = result.Kept.Aim.Answer is KeptAnswer.Refusal { Failure: var reason }
            ? [new(FieldOf(reason, order), reason)]
            : [];
        return new(result, refusals, kept);
    }

    private static string FieldOf(Failure failure, AimOrder order)
    {
        if (failure.Code == AimFailures.FirstMarkUnclear)
            return "first";
        if (failure.Code == CardFailures.RulerReading)
            return "rulerU";
        if (order.Far is null || FindAim.IsAboutNear(failure))
            return order.Near.Field;
        return order.Far.Field;
    }
}
