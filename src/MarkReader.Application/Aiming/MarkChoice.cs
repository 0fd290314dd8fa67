using MarkReader.Application.Measuring;
using MarkReader.Application.Texts;
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

    private static string NewTape => InputTexts.Get("markChoice.putNewCardOnClean");

    public static Outcome<ChosenMarks> NearAndFar(PhotoMeasurement near, PhotoMeasurement far)
    {
        if (near.Card.Kind != far.Card.Kind)
            return new Failure(AimFailures.CardsDiffer, InputTexts.Word("markChoice.nearPhotoShowsCardAnd", near.Card.Kind, far.Card.Kind), InputTexts.Get("markChoice.takeBothPhotosSameCard"));
        if (near.Marks.Count == 0)
            return MeasurePhoto.NoMark(InputTexts.Get("markChoice.nearPhoto"), near.Doubtful);
        if (near.Marks.Count == 2 && far.Marks.Count == 1 && near.Marks.Any(m => Distance(m, far.Marks[0]) <= Gate(m, far.Marks[0])))
            return new Failure(AimFailures.PhotosSwapped, InputTexts.Get("markChoice.nearPhotoShowsTwoMarks"), InputTexts.Get("markChoice.givePhotoWithOneMark"));
        if (near.Marks.Count > 1)
            return new Failure(AimFailures.NearMarkUnclear, InputTexts.Word("markChoice.nearPhotoShowsMarksInstead", near.Marks.Count), InputTexts.Get("markChoice.tapNearMark"));
        Mark first = near.Marks[0];
        return far.Marks.Count switch
        {
            0 => MeasurePhoto.NoMark(InputTexts.Get("markChoice.farPhoto"), far.Doubtful),
            1 => new ChosenMarks(first, far.Marks[0], [.. Coincidence(first, far.Marks[0])]),
            2 => NewOf(first, far.Marks),
            _ => new Failure(AimFailures.FarMarkUnclear, InputTexts.Word("markChoice.farPhotoShowsMarksAt", far.Marks.Count), InputTexts.Get("markChoice.tapFarMark") + NewTape),
        };
    }

    public static Outcome<ChosenMarks> OnePhoto(PhotoMeasurement photo, FirstMark first)
    {
        if (photo.Marks.Count == 0)
            return MeasurePhoto.NoMark("", photo.Doubtful);
        if (photo.Marks.Count != 2)
            return new Failure(AimFailures.TwoMarksNeeded, photo.Marks.Count == 1 ? InputTexts.Get("markChoice.photoShowsOneMarkInstead") : InputTexts.Say("markChoice.photoShowsMarksInsteadTwo", photo.Marks.Count), InputTexts.Get("markChoice.tapBothMarks"));
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
            : new Failure(AimFailures.FirstMarkUnclear, InputTexts.Word("markChoice.twoMarksDifferByOnly", Mm(difference), sideways ? "sideways" : InputTexts.Get("markChoice.inHeight")), InputTexts.Word("markChoice.sayWhichCameFirstBy", sideways ? InputTexts.Get("markChoice.upperOrLower") : InputTexts.Get("markChoice.leftOrRight")));
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
            : new Failure(ReadingFailures.SameMarkNamed, InputTexts.Get("markChoice.bothPlacesNamedInPhoto"), InputTexts.Get("markChoice.nameMiddleNearMarkAnd"));
    }

    private static Outcome<ChosenMarks> NewOf(Mark near, IReadOnlyList<Mark> marks)
    {
        Mark old = marks.MinBy(m => Distance(near, m))!;
        Mark fresh = marks.Single(m => m != old);
        if (Distance(near, old) > Gate(near, old))
            return new Failure(AimFailures.NearMarkMoved, InputTexts.Word("markChoice.neitherMarkFarPhotoWhere", Mm(Distance(near, old))), InputTexts.Get("markChoice.cardOrTapeWasMoved") + NewTape);
        if (Distance(near, fresh) <= Gate(near, fresh) || Distance(near, fresh) < 2 * Distance(near, old))
            return new Failure(AimFailures.MarksTooClose, InputTexts.Word("markChoice.twoMarksFarPhotoOnly", Mm(Distance(old, fresh))), InputTexts.Get("markChoice.legNearlyAlignedFireFar"));
        return new ChosenMarks(near, fresh, [.. Shift(near, old)]);
    }

    private static IEnumerable<Warning> Coincidence(Mark near, Mark far)
    {
        if (Distance(near, far) <= Gate(near, far))
            yield return new("marksCoincide", InputTexts.Get("markChoice.farMarkLiesAtPlace"));
        else if (Distance(near, far) < (near.Diameter + far.Diameter).Millimetres / 2)
            yield return new("marksOverlap", InputTexts.Get("markChoice.farMarkOverlapsPlaceNear"));
    }

    private static IEnumerable<Warning> Shift(Mark near, Mark again)
    {
        double distance = Distance(near, again);
        if (distance > LeastShift && distance > GateInSigmas * Sigma(near, again))
            yield return new("nearMarkShifted", InputTexts.Say("markChoice.nearMarkFromWhereNear", Mm(distance)));
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
