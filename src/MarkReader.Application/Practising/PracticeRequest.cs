using MarkReader.Alignment.Estimates;
using MarkReader.Application.Texts;
using MarkReader.Practice.Misalignment;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>The practice machine that is wanted, not yet checked.</summary>
/// <param name="Seed">Which of the random machines; the same number gives the same machine and the same chance.</param>
/// <param name="Slope">Largest slope left in each leg on each axis, mrad.</param>
/// <param name="Twist">Largest height of one corner of the frame, high or low, mm.</param>
/// <param name="Bend">Bend of both rails in the middle, mm.</param>
/// <param name="Mark">Standard deviation of a mark from pulse to pulse, mm.</param>
/// <param name="Tolerance">Largest distance of two marks over the bed, and of the steady mark from the entry hole's centre, mm.</param>
public sealed record PracticeRequest(
    int Seed,
    double Slope = PracticeRequest.UsualSlope,
    double Twist = 0,
    double Bend = 0,
    double Mark = PracticeRequest.UsualMark,
    double Tolerance = PracticeRequest.UsualTolerance)
{
    public const double UsualSlope = 8, UsualMark = 0.05, UsualTolerance = 0.5;

    /// <summary>The first thing that is wrong with the request, or null.</summary>
    public Failure? Check()
    {
        Failure? Between(double value, double least, double most, string what) =>
            InputChecks.Between(value, (least, most), PractisingFailures.MachineInvalid, what, InputTexts.Get("practiceRequest.leaveOutUseUsualValue"));
        return Between(Slope, 0, 10, InputTexts.Get("practiceRequest.largestSlopeInMrad"))
            ?? Between(Twist, 0, 3, InputTexts.Get("practiceRequest.largestHeightCornerInMm"))
            ?? Between(Bend, 0, 1, InputTexts.Get("practiceRequest.bendRailsInMm"))
            ?? Between(Mark, 0.001, 0.5, InputTexts.Get("practiceRequest.scatterMarksInMm"))
            ?? Between(Tolerance, 0.1, 5, InputTexts.Get("practiceRequest.toleranceInMm"));
    }

    /// <summary>What the request asks for, or the first thing that is wrong with it.</summary>
    internal Outcome<MisalignmentRanges> Ranges() => Check() is { } wrong
        ? wrong
        : new MisalignmentRanges
        {
            Slope = Angle.FromMilliradians(Slope),
            Twist = Length.FromMillimetres(Twist),
            RailBend = Length.FromMillimetres(Bend),
            Mark = Length.FromMillimetres(Mark),
        };
}
