using MarkReader.Application.Measuring;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>The near and the far mark, and what to say about the choice.</summary>
public sealed record ChosenMarks(Mark Near, Mark Far, IReadOnlyList<Warning> Warnings);

/// <summary>Tells which of the marks in a leg's photos is the near one and which the far one.</summary>
/// <remarks>
/// Both photos are registered by the card, so the near mark stands at the same place of the card frame in both. Its own
/// photo is the one that is used: there it is fresh, while soot of the far pulse may have changed it in the far photo,
/// and the errors of the two photos stay independent.
/// </remarks>
public static class MarkChoice
{
    /// <summary>Two marks this close are taken for the same one in two photos, mm; wider when their uncertainties are larger.</summary>
    public const double SameMarkGate = 0.5;

    /// <summary>The gate in standard deviations of the distance.</summary>
    public const double GateInSigmas = 4;

    /// <summary>The two marks of one photo must differ by this much in the direction that names the near one, mm.</summary>
    public const double LeastDifference = 0.2;

    // A near mark seen again farther off than this (and than its uncertainty explains) is worth a warning, mm.
    private const double LeastShift = 0.1;

    private const string NewTape = "put a new card on clean tape and repeat both pulses";

    public static Outcome<ChosenMarks> NearAndFar(PhotoMeasurement near, PhotoMeasurement far)
    {
        if (near.Card.Kind != far.Card.Kind)
            return new Failure(AimFailures.CardsDiffer, $"the near photo shows a {near.Card.Kind} card and the far photo a {far.Card.Kind} card", "take both photos of the same card on the same tape");
        if (near.Marks.Count == 0)
            return MeasurePhoto.NoMark("near photo: ", near.Doubtful);
        if (near.Marks.Count == 2 && far.Marks.Count == 1 && near.Marks.Any(m => Distance(m, far.Marks[0]) <= Gate(m, far.Marks[0])))
            return new Failure(AimFailures.PhotosSwapped, "the near photo shows two marks and the far photo only one of them; the photos look swapped", "give the photo with one mark as the near one");
        if (near.Marks.Count > 1)
            return new Failure(AimFailures.NearMarkUnclear, $"the near photo shows {near.Marks.Count} marks instead of one", "tap the near mark (command line: --near-at X,Y), or fire the near pulse on clean tape");
        Mark first = near.Marks[0];
        return far.Marks.Count switch
        {
            0 => MeasurePhoto.NoMark("far photo: ", far.Doubtful),
            1 => new ChosenMarks(first, far.Marks[0], [.. Coincidence(first, far.Marks[0])]),
            2 => NewOf(first, far.Marks),
            _ => new Failure(AimFailures.FarMarkUnclear, $"the far photo shows {far.Marks.Count} marks; at most the near and the far one are expected", "tap the far mark (command line: --far-at X,Y), or " + NewTape),
        };
    }

    public static Outcome<ChosenMarks> OnePhoto(PhotoMeasurement photo, FirstMark first)
    {
        if (photo.Marks.Count == 0)
            return MeasurePhoto.NoMark("", photo.Doubtful);
        if (photo.Marks.Count != 2)
            return new Failure(AimFailures.TwoMarksNeeded, photo.Marks.Count == 1 ? "the photo shows one mark instead of two" : $"the photo shows {photo.Marks.Count} marks instead of two", "tap both marks (command line: --near-at and --far-at), or give a near and a far photo");
        double Place(Mark mark) => first switch
        {
            FirstMark.Left => mark.Photo.X,
            FirstMark.Right => -mark.Photo.X,
            FirstMark.Upper => mark.Photo.Y,
            FirstMark.Lower => -mark.Photo.Y,
            _ => throw new ArgumentOutOfRangeException(nameof(first), first, null),
        };
        Mark near = photo.Marks.MinBy(Place)!;
        Mark far = photo.Marks.Single(m => m != near);
        double difference = (Place(far) - Place(near)) / photo.Card.PixelsPerMm;
        bool sideways = first is FirstMark.Left or FirstMark.Right;
        return difference >= LeastDifference
            ? new ChosenMarks(near, far, [])
            : new Failure(AimFailures.FirstMarkUnclear, $"the two marks differ by only {Mm(difference)} {(sideways ? "sideways" : "in height")}", $"say which came first by {(sideways ? "upper or lower" : "left or right")}");
    }

    /// <summary>The two marks of one photo at the places that the user named.</summary>
    public static Outcome<ChosenMarks> Named(PhotoMeasurement photo, PixelPoint nearAt, PixelPoint farAt)
    {
        if (MeasurePhoto.At(photo, nearAt) is not { } near)
            return MeasurePhoto.NothingAt(nearAt);
        if (MeasurePhoto.At(photo, farAt) is not { } far)
            return MeasurePhoto.NothingAt(farAt);
        return near != far
            ? new ChosenMarks(near, far, [])
            : new Failure(ReadingFailures.SameMarkNamed, "both places named in the photo are on the same mark", "name the middle of the near mark and the middle of the far mark");
    }

    private static Outcome<ChosenMarks> NewOf(Mark near, IReadOnlyList<Mark> marks)
    {
        Mark old = marks.MinBy(m => Distance(near, m))!;
        Mark fresh = marks.Single(m => m != old);
        if (Distance(near, old) > Gate(near, old))
            return new Failure(AimFailures.NearMarkMoved, $"neither mark of the far photo is where the near photo shows the near mark; the closer one is {Mm(Distance(near, old))} off", "the card or the tape was moved or the photos are of different cards: " + NewTape);
        if (Distance(near, fresh) <= Gate(near, fresh) || Distance(near, fresh) < 2 * Distance(near, old))
            return new Failure(AimFailures.MarksTooClose, $"the two marks of the far photo are only {Mm(Distance(old, fresh))} apart and both may be the near one", "the leg is nearly aligned: fire the far pulse on clean tape and photograph it alone");
        return new ChosenMarks(near, fresh, [.. Shift(near, old)]);
    }

    private static IEnumerable<Warning> Coincidence(Mark near, Mark far)
    {
        if (Distance(near, far) <= Gate(near, far))
            yield return new("marksCoincide", "The far mark lies at the place of the near one. Either both pulses fell on one spot and the leg is aligned, or the far pulse left no mark: fire the far pulse on clean tape to tell.");
        else if (Distance(near, far) < (near.Diameter + far.Diameter).Millimetres / 2)
            yield return new("marksOverlap", "The far mark overlaps the place of the near one. If both pulses fell on the same tape it is a blend of the two: fire the far pulse on clean tape.");
    }

    private static IEnumerable<Warning> Shift(Mark near, Mark again)
    {
        double distance = Distance(near, again);
        if (distance > LeastShift && distance > GateInSigmas * Sigma(near, again))
            yield return new("nearMarkShifted", $"The near mark is {Mm(distance)} from where the near photo shows it: the card may have moved or may not lie flat. Expect the aim point to be off by as much.");
    }

    private static double Gate(Mark a, Mark b) => Math.Max(SameMarkGate, GateInSigmas * Sigma(a, b));

    private static double Sigma(Mark a, Mark b)
    {
        Covariance2 sum = a.Centre.Covariance + b.Centre.Covariance;
        return Math.Sqrt(sum.Uu + sum.Vv);
    }

    private static double Distance(Mark a, Mark b) => a.Centre.Point.DistanceTo(b.Centre.Point);

    private static SaidLength Mm(double value) => new(value, "0.00");
}
