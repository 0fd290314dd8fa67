using MarkReader.Quantities;

namespace MarkReader.Cameras.Models;

/// <summary>How a photo is turned clockwise to be displayed, in quarters, against how the sensor gave it.</summary>
public readonly record struct PhotoTurn
{
    private PhotoTurn(int quarters) => Quarters = quarters;

    /// <summary>0 to 3.</summary>
    public int Quarters { get; }

    public static PhotoTurn None => default;

    /// <summary>From EXIF's orientation (1, 6, 3, 8); null for the mirrored ones, which no camera writes.</summary>
    public static PhotoTurn? OfOrientation(int orientation) => orientation switch
    {
        1 => None,
        6 => new(1),
        3 => new(2),
        8 => new(3),
        _ => null,
    };

    /// <summary>A point as displayed, as the sensor gave it.</summary>
    /// <param name="displayed">Size as displayed.</param>
    public PixelPoint ToSensor(PixelPoint p, PhotoSize displayed) => Quarters switch
    {
        0 => p,
        1 => new(p.Y, displayed.Width - 1 - p.X),
        2 => new(displayed.Width - 1 - p.X, displayed.Height - 1 - p.Y),
        _ => new(displayed.Height - 1 - p.Y, p.X),
    };

    public PixelVector ToSensor(PixelVector v) => Quarters switch
    {
        0 => v,
        1 => new(v.Y, -v.X),
        2 => new(-v.X, -v.Y),
        _ => new(-v.Y, v.X),
    };

    /// <summary>The size of the sensor's picture.</summary>
    public PhotoSize ToSensor(PhotoSize displayed) => Quarters % 2 == 0 ? displayed : new(displayed.Height, displayed.Width);

    /// <summary>The camera for photos displayed with this turn.</summary>
    public CameraModel Displayed(CameraModel sensor)
    {
        CameraModel model = sensor;
        for (int i = 0; i < Quarters; i++)
            model = model.TurnedClockwise();
        return model;
    }
}
