using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Visits;
using MarkReader.Drawing.Pictures;

namespace MarkReader.Application.Pictures;

/// <summary>The screw that is to be turned.</summary>
internal static class ScrewPicture
{
    /// <returns>Null when no screw is to be turned.</returns>
    public static VisitPicture? Of(PictureSource source)
    {
        if (source.Advice.Action is not VisitAction.Turn turn || source.Setup.Legs.FirstOrDefault(l => l.Name == turn.Leg) is not { } leg)
            return null;
        VisitPictureWords words = source.Words;
        IReadOnlyList<FrameContact> contacts = leg.Setup.Frame.Contacts;
        string saying = source.Style.TurnWords(turn.Turns);
        FrameContact? screw = contacts.FirstOrDefault(c => c.Screw == turn.Screw);
        string place = screw switch
        {
            { X: < 0, Y: < 0 } => words.LowerLeft,
            { Y: < 0 } => words.LowerRight,
            { X: < 0 } => words.UpperLeft,
            _ => words.UpperRight,
        };
        return new(
            "screw",
            VisitPictureWords.Fill(words.Screw, turn.Screw, place, saying),
            new ScrewDial(VisitPictureWords.Fill(words.ScrewTitle, leg.Name, turn.Screw), [.. contacts.Select(c => new DialContact(c.Screw, c.X, c.Y))], turn.Screw, turn.Turns, saying) { Style = source.Style.Style });
    }
}
