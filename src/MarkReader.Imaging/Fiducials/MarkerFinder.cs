using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace MarkReader.Imaging.Fiducials;

/// <summary>Recognises square markers on a reduced copy of the photo; corners come back in full-size pixels, good to a few pixels.</summary>
internal static class MarkerFinder
{
    private static readonly Lazy<Dictionary> s_dictionary = new(() => CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict4X4_50));

    /// <param name="dictionary">Another dictionary than the cards'.</param>
    public static IReadOnlyList<MarkerSighting> Find(Mat reduced, PixelScale scale, Dictionary? dictionary = null)
    {
        using ArucoDetector detector = new(dictionary ?? s_dictionary.Value, new DetectorParameters { CornerRefinementMethod = CornerRefineMethod.None }, new RefineParameters());
        detector.DetectMarkers(reduced, out Point2f[][] corners, out int[] ids, out _);
        return [.. ids.Zip(corners, (id, quad) => new MarkerSighting(id, [.. quad.Select(c => scale.ToFull(c.X, c.Y))]))];
    }
}
