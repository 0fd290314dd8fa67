using MarkReader.Application.Cameras;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>Takes photos of a printed card in, checks it with a camera that is kept, and keeps what was found; the photos are not kept.</summary>
public sealed class CardCheckDesk(CardCheckStore checks, CameraStore cameras)
{
    /// <summary>Longest name of a check.</summary>
    public const int LongestName = 80;

    /// <param name="name">What the check is called; blank for none.</param>
    /// <param name="count">How many photos there are.</param>
    /// <param name="photos">Read when they are needed, so that one is in memory at a time.</param>
    /// <param name="request">The request's key; one that is repeated gives the check that it made. Null: every call makes one.</param>
    public Outcome<KeptCardCheck> Check(long cameraId, string name, int count, IEnumerable<BoardPhotoFile> photos, CardCheckInput input, RequestKey? request)
    {
        string called = name.Trim();
        if (called.Length > LongestName || called.Any(char.IsControl))
            return new Failure(CardCheckInputFailures.NameInvalid, CardCheckTexts.Word("input.name", LongestName), CardCheckTexts.Get("input.nameHint"));
        if (!checks.Earlier(request).TryGet(out EarlierKept<KeptCardCheck>? earlier, out Failure? failure))
            return failure;
        if (earlier.Kept is { } there)
            return there;
        if (!cameras.Find(cameraId).TryGet(out KeptCamera? camera, out failure) || !CheckCard.Run(count, photos, camera.Profile, input).TryGet(out CardFinding? finding, out failure))
            return failure;
        cameras.Used(camera.Name);
        return checks.Add(cameraId, called, CardCheckReport.Of(finding), request);
    }
}
