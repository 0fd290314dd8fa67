namespace MarkReader.Alignment.Screws;

/// <summary>Where each quantity stands in the state of a leg.</summary>
/// <remarks>
/// The beam's line first: x0 (mm), sx (mrad), y0, sy, with x = x0 + sx·z, z in metres. Then for every screw what one turn adds to
/// each of these four (mm, mrad), its lost motion b and the place c of its contact within it (turns). Then the error of each
/// station's path length (mm).
/// </remarks>
internal sealed class StateLayout(int screws, IReadOnlyList<double> paths)
{
    public const int X0 = 0, Sx = 1, Y0 = 2, Sy = 3, Line = 4;

    private const int PerScrew = 6;

    private readonly Dictionary<double, int> _station = paths.Select((path, i) => (path, i)).ToDictionary(p => p.path, p => p.i);

    public int Screws => screws;

    public IReadOnlyList<double> Paths => paths;

    public int Size => Line + (PerScrew * screws) + paths.Count;

    /// <summary>The first of the four components of a screw's response; in the order of the line.</summary>
    public static int Response(int screw) => Line + (PerScrew * screw);

    public static int Backlash(int screw) => Response(screw) + 4;

    public static int Contact(int screw) => Response(screw) + 5;

    public int PathError(double path) => Line + (PerScrew * screws) + _station[path];

    public int PathError(int station) => Line + (PerScrew * screws) + station;
}
