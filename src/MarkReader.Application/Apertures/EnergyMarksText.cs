using MarkReader.Alignment.Apertures;
using MarkReader.Alignment.Estimates;
using MarkReader.Application.Inputs;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Apertures;

/// <summary>Marks of pulses of different energy.</summary>
public sealed record EnergyMarks(IReadOnlyList<EnergyMark> Marks);

/// <summary>Reads marks as energy:diameter or energy:diameter:uncertainty, like 1:2.1,2:2.9,4:3.5; the energy in any unit, lengths in mm.</summary>
public static class EnergyMarksText
{
    /// <summary>Standard uncertainty of a diameter when none is given, mm: the edge of a burn read to about ±0.1 mm (0.1/√3 ≈ 0.05; JCGM 100:2008, 4.3.7).</summary>
    public const double DefaultUncertainty = 0.05;

    public static Outcome<EnergyMarks> Read(string text)
    {
        List<EnergyMark> marks = [];
        foreach (string item in ListText.Items(text))
        {
            List<double> numbers = [];
            foreach (string part in item.Split(':'))
            {
                // A comma that parts no items stands before decimals.
                if (NumberText.Read(part.Replace(',', '.')).TryGet(out Number? number, out _) && double.IsFinite(number.Value))
                    numbers.Add(number.Value);
                else
                    return Unreadable(item);
            }

            if (numbers.Count is not (2 or 3))
                return Unreadable(item);
            marks.Add(new(numbers[0], MeasuredLength.FromMillimetres(numbers[1], numbers.Count == 3 ? numbers[2] : DefaultUncertainty)));
        }

        return new EnergyMarks(marks);
    }

    private static Failure Unreadable(string item) => new(
        ApertureInputFailures.MarksUnreadable,
        InputTexts.Word("energyMarksText.notMarkAsEnergyDiameter", ListText.Shown(item)),
        InputTexts.Get("energyMarksText.writeMarksLikeEnergiesIn"));
}
