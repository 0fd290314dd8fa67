using MarkReader.Cameras.Boards;
using MarkReader.Cameras.Models;

namespace MarkReader.Cameras.Calibration;

/// <summary>What is believed of the shared parameters before the photos are seen: normal, 1/σ² = 0 where nothing is.</summary>
internal sealed class Beliefs
{
    /// <summary>Growth of black, px: in the photo's middle, and its change from there to a corner or with the edge's direction.</summary>
    private const double Growth = 0.5, GrowthChange = 0.1;

    private readonly double[] _expected = new double[Globals.Count];
    private readonly double[] _precision = new double[Globals.Count];

    private Beliefs()
    {
    }

    /// <summary>Weak ones about a board and a lens, that keep what the views hardly show from running away (common practice, no source).</summary>
    public static Beliefs OfBoard { get; } = Board();

    /// <summary>A camera known to its uncertainties, and what a card's print and paper may be at most (common practice, no source).</summary>
    /// <param name="standardUncertainties">Of the first <see cref="Globals.Stretch"/> parameters; a focal length stands once, for both.</param>
    /// <param name="reach">Half the card's side, mm.</param>
    public static Beliefs OfCamera(CameraModel camera, IReadOnlyList<double> standardUncertainties, double reach)
    {
        // The card bends by some millimetres at its sides.
        double bend = 5 * (BoardShape.Reach / reach) * (BoardShape.Reach / reach);
        Beliefs beliefs = new();
        double[] values = new Globals(camera, BoardShape.Flat).Values();
        for (int i = 0; i < Globals.Stretch; i++)
            beliefs.Set(i, standardUncertainties[i], values[i]);
        beliefs.Set(Globals.Stretch, 0.03);
        beliefs.Set(Globals.Skew, 0.03);
        beliefs.Set(Globals.Spread, 0.1);
        for (int i = 0; i < 3; i++)
            beliefs.Set(Globals.Bend + i, bend);
        return beliefs;
    }

    public double Expected(int element) => _expected[element];

    public double PrecisionOf(int element) => _precision[element];

    /// <summary>1/σ² of each term of a photo's growth.</summary>
    public static double PrecisionOfGrowth(int term) => 1 / (term == 0 ? Growth * Growth : GrowthChange * GrowthChange);

    private static Beliefs Board()
    {
        Beliefs beliefs = new();
        beliefs.Set(Globals.K1, 1);
        beliefs.Set(Globals.K2, 1);
        beliefs.Set(Globals.K3, 1);
        beliefs.Set(Globals.P1, 0.02);
        beliefs.Set(Globals.P2, 0.02);
        beliefs.Set(Globals.Stretch, 0.005);
        for (int i = 0; i < 3; i++)
            beliefs.Set(Globals.Bend + i, 1);
        beliefs.Set(Globals.Spread, 0.1);
        return beliefs;
    }

    private void Set(int element, double sigma, double expected = 0) => (_expected[element], _precision[element]) = (expected, 1 / (sigma * sigma));
}
