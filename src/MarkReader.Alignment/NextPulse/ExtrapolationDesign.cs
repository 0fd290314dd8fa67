using MarkReader.Quantities;

namespace MarkReader.Alignment.NextPulse;

/// <summary>How to share pulses of equal scatter between the near and the far station for the surest aim point, paths taken as exact.</summary>
/// <remarks>
/// u² = σ²·((Lfar + k)²/n_near + (Lnear + k)²/n_far)/(Lfar − Lnear)², least for n_near : n_far = Lfar + k : Lnear + k
/// (P. G. Hoel and A. Levine, Ann. Math. Stat. 35 (1964) 1553, doi:10.1214/aoms/1177700379).
/// </remarks>
public static class ExtrapolationDesign
{
    /// <summary>The part of all pulses that belongs to the near station.</summary>
    public static double NearShare(Length near, Length far, Length pivotOffset) =>
        (far + pivotOffset).Millimetres / (far + near + (2 * pivotOffset)).Millimetres;

    /// <summary>u²(aim)/σ², each component.</summary>
    public static double Variance((Length Path, int Pulses) near, (Length Path, int Pulses) far, Length pivotOffset)
    {
        double lever = (far.Path - near.Path).Millimetres;
        double byNear = (far.Path + pivotOffset).Millimetres / lever, byFar = (near.Path + pivotOffset).Millimetres / lever;
        return (byNear * byNear / near.Pulses) + (byFar * byFar / far.Pulses);
    }

    /// <summary>The best whole numbers of near and far pulses for a total of at least two.</summary>
    public static (int Near, int Far) Pulses(int total, Length near, Length far, Length pivotOffset)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(total, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(total, 10_000);
        int best = Enumerable.Range(1, total - 1).MinBy(n => Variance((near, n), (far, total - n), pivotOffset));
        return (best, total - best);
    }
}
