using MarkReader.Application.Inputs;
using MarkReader.Application.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>Takes the photos of a form without scripts in, one after the other; a refused one does not keep the others out.</summary>
internal sealed class PhotoIntake(MeasuringTurns turns, HeldPhotos held)
{
    /// <param name="person">Whose photos they are; empty where that is not asked.</param>
    /// <param name="add">Takes one in by its bytes and its file's name; null, or why not.</param>
    /// <returns>Why not all were taken in, and those that are held because they may be taken in later; null when all were.</returns>
    public async Task<LeftPhotos?> TakeAsync(HttpContext context, UploadForm form, string person, Func<byte[], string, Failure?> add)
    {
        CancellationToken cancellation = context.RequestAborted;
        FormPhotos photos = FormPhotos.Of(context, form, held);
        if (photos.Gone is { } gone)
            return new(gone, await photos.HoldAsync(photos.All, person));
        if (photos.All.Count == 0)
            return new(new(ServiceFailures.FieldMissing, ServiceTexts.Get("visit.noPhotoWasChosen"), ServiceTexts.Get("visit.takeOrChooseOneFirst")), null);
        List<(string Name, Failure Failure)> refused = [];
        List<IFormFile> left = [];
        for (int i = 0; i < photos.All.Count; i++)
        {
            using IDisposable? turn = await turns.TakeTurnAsync(cancellation);
            if (turn is null)
                return new(Problem.TooManyWaiting(FormPhotos.Chosen).Failure, await photos.HoldAsync([.. left, .. photos.All.Skip(i)], person));
            IFormFile file = photos.All[i];
            byte[] bytes = await UploadForm.BytesAsync(file, cancellation);
            if (add(bytes, file.FileName) is not { } failure)
                continue;
            refused.Add((FileLabel.Shown(file.FileName), failure));
            // What is there already need not come again.
            if (failure.Code != StudyInputFailures.PhotoAgain)
                left.Add(file);
        }

        HeldSet? kept = await photos.HoldAsync(left, person);
        if (kept is null)
            photos.LetGo(person);
        if (refused.Count == 0)
            return null;
        (string name, Failure first) = refused[0];
        Wording what = refused.Count == 1 ? ServiceTexts.Word("intake.one", name, first.What) : ServiceTexts.Word("intake.several", refused.Count, photos.All.Count, name, first.What);
        return new(first with { What = what }, kept);
    }
}

/// <summary>Photos of a form that were not taken in.</summary>
/// <param name="Why">The first refusal, with the file's name.</param>
/// <param name="Held">Null when none is held.</param>
internal sealed record LeftPhotos(Failure Why, HeldSet? Held);
