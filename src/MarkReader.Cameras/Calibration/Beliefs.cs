namespace MarkReader.Cameras.Calibration;

/// <summary>Weak beliefs that keep what the views hardly show from running away: standard deviations about zero (common practice, no source).</summary>
internal static class Beliefs
{
    /// <summary>Growth of black, px: in the photo's middle, and its change from there to a corner or with the edge's direction.</summary>
    private const double Growth = 0.5, GrowthChange = 0.1;

    /// <summary>1/σ² of each shared parameter but the focal lengths and the principal point, which have none.</summary>
    private static readonly double[] s_precision = Precision();

    public static double PrecisionOf(int element) => s_precision[element];

    /// <summary>1/σ² of each term of a photo's growth.</summary>
    public static double PrecisionOfGrowth(int term) => 1 / (term == 0 ? Growth * Growth : GrowthChange * GrowthChange);

    private static double[] Precision()
    {
        double[] p = new double[Globals.Count];
        Set(Globals.K1, 1);
        Set(Globals.K2, 1);
        Set(Globals.K3, 1);
        Set(Globals.P1, 0.02);
        Set(Globals.P2, 0.02);
        Set(Globals.Stretch, 0.005);
        for (int i = 0; i < 3; i++)
            Set(Globals.Bend + i, 1);
        Set(Globals.Spread, 0.1);
        return p;

        void Set(int element, double sigma) => p[element] = 1 / (sigma * sigma);
    }
}
