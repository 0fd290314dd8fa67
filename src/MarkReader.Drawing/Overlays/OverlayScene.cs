using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays;

/// <summary>What is to be drawn over a photo.</summary>
/// <param name="Photo">The photo's size, px.</param>
/// <param name="Projection">Card frame to photo and back; the free zone lies in front of the camera.</param>
/// <param name="ZoneSide">Side of the card's free zone.</param>
/// <param name="Content">The marks, or the marks of a leg with its aim point.</param>
public sealed record OverlayScene(PhotoSize Photo, ICardProjection Projection, Length ZoneSide, OverlayContent Content)
{
    /// <summary>Whether the outline of the free zone is drawn. Default: yes.</summary>
    public bool ShowZone { get; init; } = true;

    /// <summary>Whether the directions u and v are drawn. Default: no.</summary>
    public bool ShowAxes { get; init; }

    /// <summary>Whether the scale bar is a part of an inch long; else a round number of mm. Default: mm.</summary>
    public bool Inches { get; init; }
}

/// <summary>The subject of an overlay.</summary>
public abstract record OverlayContent
{
    private OverlayContent()
    {
    }

    /// <summary>Marks alone, numbered from 1 in the order given.</summary>
    public sealed record Marks(IReadOnlyList<DrawnMark> Items) : OverlayContent;

    /// <summary>The near and the far mark of a leg and its aim point.</summary>
    public sealed record Aiming(DrawnMark Near, DrawnMark Far, MeasuredPoint Aim) : OverlayContent;

    /// <summary>A leg in progress.</summary>
    /// <param name="Made">The marks in the order of time; the last ones are drawn in front.</param>
    /// <param name="Aim">The aim point; null while it is not known.</param>
    /// <param name="Expected">Places at which the next mark may lie.</param>
    /// <param name="Moving">Where an arrow begins, to each of <paramref name="Expected"/> or else to the aim point; null: no arrow.</param>
    /// <param name="Title">What is shown, in a few words.</param>
    /// <param name="Description">The numbers, in sentences.</param>
    public sealed record Leg(
        IReadOnlyList<LegMarkShown> Made, PointShown? Aim, IReadOnlyList<PointShown> Expected, CardPoint? Moving, string Title, string Description) : OverlayContent;
}

/// <summary>A mark of a leg in progress.</summary>
/// <param name="IsFar">Drawn as a square; else as a circle.</param>
/// <param name="Words">Its label, such as "3 far".</param>
/// <param name="Counts">False for a mark that a later change has made stale: drawn without colour.</param>
public sealed record LegMarkShown(DrawnMark Mark, bool IsFar, string Words, bool Counts);

/// <summary>A point that is no mark, with the lines of its label.</summary>
public sealed record PointShown(MeasuredPoint Point, IReadOnlyList<string> Words);

/// <summary>A mark to be drawn: its centre and its diameter.</summary>
public sealed record DrawnMark(MeasuredPoint Centre, Length Diameter);

/// <summary>The part of the photo that an overlay is drawn for; line widths and letters are chosen for its width.</summary>
public enum OverlayView
{
    /// <summary>The whole photo.</summary>
    Photo,

    /// <summary>A part of the photo about the free zone and the aim point.</summary>
    Crop,
}
