using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;

namespace MarkReader.Cameras.Calibration;

/// <summary>The parameters that all views share, and their order.</summary>
internal sealed record Globals(CameraModel Camera, BoardShape Shape)
{
    public const int FocalX = 0;
    public const int FocalY = 1;
    public const int PrincipalX = 2;
    public const int PrincipalY = 3;
    public const int K1 = 4;
    public const int K2 = 5;
    public const int K3 = 6;
    public const int P1 = 7;
    public const int P2 = 8;
    public const int Stretch = 9;
    public const int Bend = 10;
    public const int Spread = 13;
    public const int Skew = 14;
    public const int Count = 15;

    public Globals Moved(ReadOnlySpan<double> d)
    {
        LensDistortion lens = Camera.Lens;
        return new(
            Camera with
            {
                FocalX = Camera.FocalX + d[FocalX],
                FocalY = Camera.FocalY + d[FocalY],
                Principal = new(Camera.Principal.X + d[PrincipalX], Camera.Principal.Y + d[PrincipalY]),
                Lens = new(lens.K1 + d[K1], lens.K2 + d[K2], lens.K3 + d[K3], lens.P1 + d[P1], lens.P2 + d[P2]),
            },
            new(Shape.Stretch + d[Stretch], Shape.BendUu + d[Bend], Shape.BendUv + d[Bend + 1], Shape.BendVv + d[Bend + 2], Shape.Spread + d[Spread])
            {
                Skew = Shape.Skew + d[Skew],
            });
    }

    /// <summary>The parameters in their order.</summary>
    public double[] Values() =>
    [
        Camera.FocalX, Camera.FocalY, Camera.Principal.X, Camera.Principal.Y,
        Camera.Lens.K1, Camera.Lens.K2, Camera.Lens.K3, Camera.Lens.P1, Camera.Lens.P2,
        Shape.Stretch, Shape.BendUu, Shape.BendUv, Shape.BendVv, Shape.Spread, Shape.Skew,
    ];

    /// <summary>For each free parameter the elements of the vector that it moves.</summary>
    public static IReadOnlyList<int[]> Free(CameraTerms terms)
    {
        List<int[]> free = [];
        if (terms.HasFlag(CameraTerms.Aspect))
            free.AddRange([[FocalX], [FocalY]]);
        else
            free.Add([FocalX, FocalY]);
        free.AddRange([[PrincipalX], [PrincipalY]]);
        Add(CameraTerms.K1, K1);
        Add(CameraTerms.K2, K2);
        Add(CameraTerms.K3, K3);
        Add(CameraTerms.Decentring, P1, P2);
        Add(CameraTerms.Stretch, Stretch);
        Add(CameraTerms.Spread, Spread);
        Add(CameraTerms.Bend, Bend, Bend + 1, Bend + 2);
        Add(CameraTerms.Skew, Skew);
        return free;

        void Add(CameraTerms term, params ReadOnlySpan<int> elements)
        {
            if (!terms.HasFlag(term))
                return;
            foreach (int element in elements)
                free.Add([element]);
        }
    }

    /// <summary>Which of the free parameters moves an element first.</summary>
    /// <exception cref="InvalidOperationException">None, or several do.</exception>
    public static int Among(IReadOnlyList<int[]> free, int element) => Enumerable.Range(0, free.Count).Single(i => free[i][0] == element);
}
