using MarkReader.Application.Pictures;
using MarkReader.Drawing.Pictures;

namespace MarkReader.Service.Display;

/// <summary>The visit's pictures in the reader's unit and with the reader's decimal sign.</summary>
internal static class PictureLook
{
    public static VisitPictureStyle Of(Figures figures) => VisitPictureStyle.Default with
    {
        Style = PictureStyle.Default with
        {
            Numbers = new(
                length => figures.Length(length.Millimetres),
                length => figures.Length(length.Millimetres, 3),
                length => figures.Short(length.Millimetres),
                number => figures.Sign(number.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)),
                figures.Preferences.Inches),
        },
    };
}
