using MarkReader.Application.Cameras;
using MarkReader.Application.CardChecks;
using MarkReader.Application.Interim;
using MarkReader.Application.Machines;
using MarkReader.Application.Practising;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Application.VisitLog;
using MarkReader.Application.VisitLog.Bundles;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;

namespace MarkReader.Service.Problems;

/// <summary>The HTTP status of each refusal: by its kind, save for those listed.</summary>
internal static class ProblemMap
{
    private static readonly Dictionary<FailureCode, int> s_special = new()
    {
        [PhotoFailures.TooLarge] = StatusCodes.Status413PayloadTooLarge,
        [PhotoFailures.Format] = StatusCodes.Status415UnsupportedMediaType,
        [StorageFailures.NotAPhoto] = StatusCodes.Status415UnsupportedMediaType,
        [StorageFailures.NotKept] = StatusCodes.Status404NotFound,
        [StorageFailures.PhotoInUse] = StatusCodes.Status409Conflict,
        [StorageFailures.Changed] = StatusCodes.Status412PreconditionFailed,
        [StorageFailures.OriginalDamaged] = StatusCodes.Status410Gone,
        [StorageFailures.DatabaseLocked] = StatusCodes.Status503ServiceUnavailable,
        [StorageFailures.StorageFull] = StatusCodes.Status507InsufficientStorage,
        [StorageFailures.DataFolderUnusable] = StatusCodes.Status500InternalServerError,
        [StorageFailures.DatabaseDamaged] = StatusCodes.Status500InternalServerError,
        [StorageFailures.DatabaseNewer] = StatusCodes.Status500InternalServerError,
        [CameraFailures.NameTaken] = StatusCodes.Status409Conflict,
        [CameraFailures.TooMany] = StatusCodes.Status409Conflict,
        [CameraFailures.TooManyCalibrations] = StatusCodes.Status409Conflict,
        [CardCheckInputFailures.TooManyChecks] = StatusCodes.Status409Conflict,
        [InterimFailures.TooManySets] = StatusCodes.Status409Conflict,
        [InterimFailures.NotMeasured] = StatusCodes.Status409Conflict,
        [CameraFailures.TooManyPhotos] = StatusCodes.Status409Conflict,
        [MachineFailures.TooLarge] = StatusCodes.Status413PayloadTooLarge,
        [MachineFailures.TooMany] = StatusCodes.Status409Conflict,
        [StudyInputFailures.TooMany] = StatusCodes.Status409Conflict,
        [StudyInputFailures.PhotosEnough] = StatusCodes.Status409Conflict,
        [StudyInputFailures.PhotoTwice] = StatusCodes.Status409Conflict,
        [StudyInputFailures.PhotoAgain] = StatusCodes.Status409Conflict,
        [StudyInputFailures.Conflict] = StatusCodes.Status409Conflict,
        [StorageFailures.KeyReused] = StatusCodes.Status422UnprocessableEntity,
        [PractisingFailures.NotPractice] = StatusCodes.Status409Conflict,
        [PractisingFailures.NoPulseNow] = StatusCodes.Status409Conflict,
        [VisitLogFailures.PhotoMarkUsed] = StatusCodes.Status409Conflict,
        [VisitLogFailures.TooMany] = StatusCodes.Status409Conflict,
        [VisitLogFailures.EventUnknown] = StatusCodes.Status404NotFound,
        [VisitLogFailures.NothingToTakeBack] = StatusCodes.Status409Conflict,
        [BundleFailures.TooLarge] = StatusCodes.Status413PayloadTooLarge,
        [ServiceFailures.HostNotAllowed] = StatusCodes.Status421MisdirectedRequest,
        [ServiceFailures.OriginNotAllowed] = StatusCodes.Status403Forbidden,
        [ServiceFailures.KeyMissing] = StatusCodes.Status401Unauthorized,
        [ServiceFailures.KeyWrong] = StatusCodes.Status401Unauthorized,
        [ServiceFailures.KeyTries] = StatusCodes.Status429TooManyRequests,
        [ServiceFailures.RequestTooLarge] = StatusCodes.Status413PayloadTooLarge,
        [ServiceFailures.MediaTypeNotTaken] = StatusCodes.Status415UnsupportedMediaType,
        [ServiceFailures.PhotosGone] = StatusCodes.Status410Gone,
        [ServiceFailures.IfMatchMissing] = StatusCodes.Status428PreconditionRequired,
        [ServiceFailures.NotFound] = StatusCodes.Status404NotFound,
        [ServiceFailures.Busy] = StatusCodes.Status503ServiceUnavailable,
        [ServiceFailures.Fault] = StatusCodes.Status500InternalServerError,
    };

    public static int StatusOf(FailureCode code) => s_special.TryGetValue(code, out int status)
        ? status
        : code.Kind switch
        {
            FailureKind.NotMeasurable => StatusCodes.Status422UnprocessableEntity,
            _ => StatusCodes.Status400BadRequest,
        };
}
