using System.Globalization;
using System.Text;
using MarkReader.Application.Interim;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>Sets of reference photos, from the form that was sent to the set that is kept, and measured again; the page and the interface share it.</summary>
internal sealed class InterimDispatch(InterimDesk desk, MeasuringTurns turns, MeasuringProgress progress, TimeProvider clock)
{
    /// <summary>The name of a set to which none is given: the day.</summary>
    public string UsualName => clock.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <param name="photos">The photos of the form.</param>
    /// <param name="key">The request's key; null for none.</param>
    public async Task<(KeptInterimSet? Set, FieldFailure? Wrong)> KeepAsync(UploadForm form, IReadOnlyList<IFormFile> photos, string? key, CancellationToken cancellation)
    {
        if (photos.Count == 0)
            return (null, new("photos", new(ServiceFailures.FieldMissing, ServiceTexts.Get("visit.noPhotoWasChosen"), ServiceTexts.Get("interim.choosePhotos"))));
        string name = form.Text("name") ?? UsualName;
        RequestKey? request = null;
        if (key is not null && !RequestKey.Of(key, Encoding.UTF8.GetBytes($"{name} {string.Join(' ', photos.Select(PhotoDigest.Of))}")).TryGet(out request, out Failure? failure))
            return (null, new("photos", failure));
        return await RunAsync(key, photos.Count, tell => desk.Keep(name, photos.Count, photos.Select(SentPhoto.Read), request, tell), cancellation);
    }

    /// <param name="key">By which the progress can be asked for; null for none.</param>
    public Task<(KeptInterimSet? Set, FieldFailure? Wrong)> MeasureAsync(long id, string? key, CancellationToken cancellation) =>
        RunAsync(key, 0, tell => desk.MeasureAgain(id, tell), cancellation);

    /// <summary>What a request sends that keeps the result of a set anew.</summary>
    public static byte[] Anew(long id) => Encoding.UTF8.GetBytes(FormattableString.Invariant($"anew {id}"));

    private async Task<(KeptInterimSet? Set, FieldFailure? Wrong)> RunAsync(string? key, int count, Func<Action<int, int>, Outcome<KeptInterimSet>> work, CancellationToken cancellation)
    {
        using IDisposable? turn = await turns.TakeTurnAsync(cancellation);
        if (turn is null)
            return (null, Problem.TooManyWaiting("photos"));
        // A key that is too long is none.
        string told = key is { Length: <= RequestKey.Longest } ? key : "";
        progress.Tell(told, 0, count);
        try
        {
            // The measuring is work for the processor: a thread of its own, so that others are answered meanwhile.
            Outcome<KeptInterimSet> outcome = await Task.Run(() => work((done, total) => progress.Tell(told, done, total)), cancellation);
            return outcome.TryGet(out KeptInterimSet? set, out Failure? failure) ? (set, null) : (null, new(failure.Code == InterimFailures.NameInvalid ? "name" : "photos", failure));
        }
        finally
        {
            progress.End(told);
        }
    }
}
