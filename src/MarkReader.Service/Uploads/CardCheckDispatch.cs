using MarkReader.Application.CardChecks;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;

namespace MarkReader.Service.Uploads;

/// <summary>From a form that was sent to a check that is kept; the page and the interface share it.</summary>
internal sealed class CardCheckDispatch(CardCheckDesk desk, MeasuringTurns turns)
{
    /// <param name="photos">The photos of the form.</param>
    /// <param name="key">The request's key; null for none.</param>
    public async Task<(KeptCardCheck? Check, FieldFailure? Wrong)> SendAsync(UploadForm upload, IReadOnlyList<IFormFile> photos, string? key, CancellationToken cancellation)
    {
        (CardCheckForm? form, FieldFailure? wrong) = CardCheckForm.Read(upload, photos);
        if (form is null)
            return (null, wrong);
        using IDisposable? turn = await turns.TakeTurnAsync(cancellation);
        if (turn is null)
            return (null, Problem.TooManyWaiting("photos"));
        RequestKey? request = null;
        if (key is not null && !form.KeyOf(key, form.Photos.Select(PhotoDigest.Of)).TryGet(out request, out Failure? failure))
            return (null, new("photos", failure));
        // The measuring is work for the processor: a thread of its own, so that others are answered meanwhile.
        Outcome<KeptCardCheck> outcome = await Task.Run(() => desk.Check(form.Camera, form.Name, form.Photos.Count, form.Photos.Select(SentPhoto.Read), form.Input, request), cancellation);
        return outcome.TryGet(out KeptCardCheck? check, out failure) ? (check, null) : (null, new(form.FieldOf(failure), failure));
    }
}
