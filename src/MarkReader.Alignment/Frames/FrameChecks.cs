using MarkReader.Alignment.Estimates;
using MarkReader.Alignment.Texts;
using MarkReader.Alignment.Threads;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Frames;

/// <summary>Checks of a frame as a user describes it. Each returns the first thing that is wrong, or null.</summary>
internal static class FrameChecks
{
    /// <summary>Distances between contacts taken for real, mm.</summary>
    public const double ShortestArm = 3, LongestArm = 500;

    private const int LongestName = 100;

    public static Failure? Arm(double arm) => InputChecks.Lengths(
        arm, (ShortestArm, LongestArm), FrameFailures.ArmInvalid, AlignmentTexts.Get("frameChecks.arm"), AlignmentTexts.Get("frameChecks.measureBetweenMiddlesTwoNeighbouring"));

    public static Failure? Pitch(double pitch) => InputChecks.Lengths(
        pitch, (ScrewThreads.LeastPitch, ScrewThreads.MostPitch), FrameFailures.PitchInvalid, AlignmentTexts.Get("frameChecks.pitch"), AlignmentTexts.Word("frameChecks.giveAdvanceInOneTurn", InputChecks.Mm(0.7)));

    public static Failure? Incidence(Angle incidence) => InputChecks.Between(
        incidence.Degrees, (0, 75), FrameFailures.IncidenceInvalid, AlignmentTexts.Get("frameChecks.mirrorAngleIncidenceInDegrees"), AlignmentTexts.Get("frameChecks.giveForMirrorThatTurns"));

    public static Failure? Contacts(IReadOnlyList<FrameContact> contacts)
    {
        int screws = contacts.Count(c => c.Screw is not null);
        if (contacts.Count != 3 || screws < 2)
            return new(FrameFailures.ContactsInvalid, AlignmentTexts.Word("frameChecks.frameHasContactsThemScrews", contacts.Count, screws), AlignmentTexts.Get("frameChecks.givePivotAndTwoScrews"));
        if (contacts.Any(c => c.Screw is { } name && (string.IsNullOrWhiteSpace(name) || name.Length > LongestName)))
            return new(FrameFailures.ScrewNameInvalid, AlignmentTexts.Get("frameChecks.screwNameEmptyOrLonger"), AlignmentTexts.Get("frameChecks.nameScrewsAsTheyMarked"));
        if (contacts.Where(c => c.Screw is not null).DistinctBy(c => c.Screw).Count() != screws)
            return new(FrameFailures.ScrewNameInvalid, AlignmentTexts.Get("frameChecks.twoScrewsFrameHaveSame"), AlignmentTexts.Get("frameChecks.giveEachScrewOwnName"));
        return Places(contacts);
    }

    private static Failure? Places(IReadOnlyList<FrameContact> c)
    {
        if (c.Any(p => !(Math.Abs(p.X) <= LongestArm && Math.Abs(p.Y) <= LongestArm)))
            return new(FrameFailures.ContactsInvalid, AlignmentTexts.Get("frameChecks.contactLiesMoreThanMm"), AlignmentTexts.Get("frameChecks.giveContactsInMmFrom"));
        double ax = c[1].X - c[0].X, ay = c[1].Y - c[0].Y, bx = c[2].X - c[0].X, by = c[2].Y - c[0].Y;
        double longest = Math.Sqrt(new[] { (ax * ax) + (ay * ay), (bx * bx) + (by * by), ((bx - ax) * (bx - ax)) + ((by - ay) * (by - ay)) }.Max());
        // The least height of the triangle is the shortest lever.
        return longest >= ShortestArm && Math.Abs((ax * by) - (ay * bx)) / longest >= ShortestArm
            ? null
            : new(FrameFailures.ContactsInvalid, AlignmentTexts.Get("frameChecks.threeContactsLieNearlyOn"), AlignmentTexts.Get("frameChecks.giveThreeDifferentCornersOr"));
    }
}
