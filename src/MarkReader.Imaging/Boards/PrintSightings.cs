using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;
using MarkReader.Cards;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Boards;

/// <summary>The printed edges of a located print as sightings in the sensor's frame.</summary>
internal static class PrintSightings
{
    /// <param name="displayed">Size of the photo in which the print was located.</param>
    public static BoardSighting[] Of(RegisteredPrint located, IPrint print, PhotoSize displayed, PhotoTurn turn)
    {
        IReadOnlyList<PrintedEdge> edges = PrintedEdges.Of(print);
        return [.. located.Edges.Select((e, i) => new BoardSighting(
            e.Card,
            turn.ToSensor(located.Seen[i], displayed),
            turn.ToSensor(e.Normal),
            Math.Sqrt(e.Variance + (ViewFit.Floor * ViewFit.Floor)),
            e.EdgeIndex,
            edges[e.EdgeIndex].ToWhite))];
    }
}
