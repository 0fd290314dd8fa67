using MarkReader.Application.Inputs;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Survey;

/// <summary>The full travels of head (x) and gantry (y), mm, not yet checked.</summary>
public sealed record Travels(double X, double Y);

/// <summary>Reads the travels, like 500,400.</summary>
public static class TravelsText
{
    public static Outcome<Travels> Read(string text) => PairText.Read(text) is { } pair
        ? new Travels(pair.X, pair.Y)
        : new Failure(SurveyInputFailures.BedUnreadable, InputTexts.Word("travelsText.notTwoTravels", PairText.Shown(text)), InputTexts.Get("travelsText.writeHeadAndGantryFull"));
}
