using MarkReader.Alignment.Estimates;
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
        arm, (ShortestArm, LongestArm), FrameFailures.ArmInvalid, "the arm", "measure between the middles of two neighbouring contacts of the mirror's plate");

    public static Failure? Pitch(double pitch) => InputChecks.Lengths(
        pitch, (ScrewThreads.LeastPitch, ScrewThreads.MostPitch), FrameFailures.PitchInvalid, "the pitch", $"give the advance in one turn, {InputChecks.Mm(0.7)} for M4");

    public static Failure? Incidence(Angle incidence) => InputChecks.Between(
        incidence.Degrees, (0, 75), FrameFailures.IncidenceInvalid, "the mirror's angle of incidence in degrees", "give 45 for a mirror that turns the beam by a right angle");

    public static Failure? Contacts(IReadOnlyList<FrameContact> contacts)
    {
        int screws = contacts.Count(c => c.Screw is not null);
        if (contacts.Count != 3 || screws < 2)
            return new(FrameFailures.ContactsInvalid, $"the frame has {contacts.Count} contacts, {screws} of them screws", "give a pivot and two screws, or three screws");
        if (contacts.Any(c => c.Screw is { } name && (string.IsNullOrWhiteSpace(name) || name.Length > LongestName)))
            return new(FrameFailures.ScrewNameInvalid, "a screw's name is empty or longer than 100 characters", "name the screws as they are marked, for example A and B");
        if (contacts.Where(c => c.Screw is not null).DistinctBy(c => c.Screw).Count() != screws)
            return new(FrameFailures.ScrewNameInvalid, "two screws of the frame have the same name", "give each screw its own name");
        return Places(contacts);
    }

    private static Failure? Places(IReadOnlyList<FrameContact> c)
    {
        if (c.Any(p => !(Math.Abs(p.X) <= LongestArm && Math.Abs(p.Y) <= LongestArm)))
            return new(FrameFailures.ContactsInvalid, "a contact lies more than 500 mm from the beam", "give the contacts in mm from the place where the beam meets the mirror");
        double ax = c[1].X - c[0].X, ay = c[1].Y - c[0].Y, bx = c[2].X - c[0].X, by = c[2].Y - c[0].Y;
        double longest = Math.Sqrt(new[] { (ax * ax) + (ay * ay), (bx * bx) + (by * by), ((bx - ax) * (bx - ax)) + ((by - ay) * (by - ay)) }.Max());
        // The least height of the triangle is the shortest lever.
        return longest >= ShortestArm && Math.Abs((ax * by) - (ay * bx)) / longest >= ShortestArm
            ? null
            : new(FrameFailures.ContactsInvalid, "the three contacts lie nearly on one line or at one place", "give three different corners, or places in mm that span a triangle");
    }
}
