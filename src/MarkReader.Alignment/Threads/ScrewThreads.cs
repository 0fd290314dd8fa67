using System.Globalization;
using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Threads;

/// <summary>Threads of adjusting screws, and how a user names one.</summary>
/// <remarks>Pitches: ISO 261 and ISO 262 (metric); ASME B1.1 (unified), 25.4 mm divided by the threads per inch.</remarks>
public static class ScrewThreads
{
    /// <summary>Smallest pitch taken for real, mm.</summary>
    public const double LeastPitch = 0.05;

    /// <summary>Largest pitch taken for real, mm.</summary>
    public const double MostPitch = 5;

    private static string Hint => AlignmentTexts.Get("screwThreads.nameThreadSuchAsM");

    public static IReadOnlyList<ScrewThread> All { get; } =
    [
        ScrewThread.Coarse("M1.6", 0.35), ScrewThread.Coarse("M2", 0.4), ScrewThread.Coarse("M2.5", 0.45), ScrewThread.Coarse("M3", 0.5),
        ScrewThread.Coarse("M4", 0.7), ScrewThread.Coarse("M5", 0.8), ScrewThread.Coarse("M6", 1.0), ScrewThread.Coarse("M8", 1.25), ScrewThread.Coarse("M10", 1.5),
        ScrewThread.Fine("M2", 0.25), ScrewThread.Fine("M2.5", 0.35), ScrewThread.Fine("M3", 0.35), ScrewThread.Fine("M4", 0.5), ScrewThread.Fine("M5", 0.5),
        ScrewThread.Fine("M6", 0.75), ScrewThread.Fine("M8", 1.0), ScrewThread.Fine("M8", 0.75),
        ScrewThread.Unified("#4", ThreadSeries.UnifiedCoarse, 40), ScrewThread.Unified("#5", ThreadSeries.UnifiedCoarse, 40),
        ScrewThread.Unified("#6", ThreadSeries.UnifiedCoarse, 32), ScrewThread.Unified("#8", ThreadSeries.UnifiedCoarse, 32),
        ScrewThread.Unified("#10", ThreadSeries.UnifiedCoarse, 24), ScrewThread.Unified("#12", ThreadSeries.UnifiedCoarse, 24), ScrewThread.Unified("1/4", ThreadSeries.UnifiedCoarse, 20),
        ScrewThread.Unified("#4", ThreadSeries.UnifiedFine, 48), ScrewThread.Unified("#5", ThreadSeries.UnifiedFine, 44),
        ScrewThread.Unified("#6", ThreadSeries.UnifiedFine, 40), ScrewThread.Unified("#8", ThreadSeries.UnifiedFine, 36),
        ScrewThread.Unified("#10", ThreadSeries.UnifiedFine, 32), ScrewThread.Unified("#12", ThreadSeries.UnifiedFine, 28), ScrewThread.Unified("1/4", ThreadSeries.UnifiedFine, 28),
    ];

    /// <summary>A thread by its name, without regard to case and blanks, or by its pitch in mm ("0.7", "0.7 mm").</summary>
    public static Outcome<ScrewThread> Parse(string text)
    {
        string name = text.Replace(" ", "", StringComparison.Ordinal).Replace('×', 'x').Replace('X', 'x');
        if (All.FirstOrDefault(t => t.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } known)
            return known;
        string number = name.EndsWith("mm", StringComparison.OrdinalIgnoreCase) ? name[..^2] : name;
        return double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double pitch)
            ? Own(pitch)
            : new Failure(ThreadFailures.Unknown, AlignmentTexts.Word("screwThreads.noThreadNamed", text.Length <= 20 ? text : text[..20] + "..."), AlignmentTexts.Word("screwThreads.useOneOrGivePitch", string.Join(", ", All.Select(t => t.Name))));
    }

    /// <summary>A thread of the user's own pitch, mm.</summary>
    public static Outcome<ScrewThread> Own(double pitch) =>
        InputChecks.Lengths(pitch, (LeastPitch, MostPitch), ThreadFailures.PitchInvalid, AlignmentTexts.Get("screwThreads.threadPitch"), Hint) is { } wrong
            ? wrong
            : new ScrewThread(InputChecks.Text(pitch) + " mm", ThreadSeries.Own, Length.FromMillimetres(pitch));
}
