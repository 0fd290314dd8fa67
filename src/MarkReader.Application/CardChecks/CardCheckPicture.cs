using MarkReader.Drawing.Pictures;
using MarkReader.Quantities;

namespace MarkReader.Application.CardChecks;

/// <summary>The zone of a checked card with the errors of marks in it.</summary>
public static class CardCheckPicture
{
    public static CardErrorMap Of(CardCheckReport r, PictureStyle? style = null) => new(
        CardCheckTexts.Get("picture.title"),
        Length.FromMillimetres(r.Card.ZoneSide),
        Length.FromMillimetres(r.Limit),
        [.. r.AsDrawn.Zone.Select(p => new PlaceError(new(p.U, p.V), new(p.ErrorU, p.ErrorV)))])
    {
        Note = CardCheckTexts.Get("picture.note"),
        Style = style ?? PictureStyle.Default,
    };
}
