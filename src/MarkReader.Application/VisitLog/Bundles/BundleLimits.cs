using MarkReader.Imaging.Photos;

namespace MarkReader.Application.VisitLog.Bundles;

/// <summary>Bounds on a file that holds a whole visit.</summary>
public static class BundleLimits
{
    /// <summary>Largest file, and all that is unpacked from it, bytes.</summary>
    public const long MostBytes = 500L << 20;

    /// <summary>Largest visit.json, bytes.</summary>
    public const int MostVisitBytes = 12 << 20;

    /// <summary>Largest photo, bytes.</summary>
    public const int MostPhotoBytes = PhotoLimits.MaxBytes;

    /// <summary>The most photos.</summary>
    public const int MostPhotos = 1000;

    /// <summary>The most events, with those that were taken back.</summary>
    public const int MostEvents = 4000;

    /// <summary>The most versions at which events were taken back; each costs advice of its own.</summary>
    internal const int MostTakenBack = 300;

    // Photos are packed already and text shrinks less than this; what grows more was made to fill memory.
    internal const int MostGrowth = 100;

    internal const int GrowthFrom = 1 << 20;

    // Of the list of entries at the file's end, bytes.
    internal const int MostDirectory = 1 << 20;
}
