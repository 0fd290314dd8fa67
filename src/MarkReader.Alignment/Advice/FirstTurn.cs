using MarkReader.Alignment.Aiming;
using MarkReader.Alignment.Screws;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Advice;

/// <summary>The first turn of a screw of which it is not known which way it pushes: it is to tell that, and to do little harm if it is the wrong way.</summary>
/// <param name="Turn">Clockwise; the other way does as well.</param>
/// <param name="Tells">Whether one more mark after it tells the direction.</param>
/// <param name="IsMoreThanWanted">Whether it is more than the slope asks for, because lost motion may swallow a smaller one.</param>
public sealed record FirstTurn(HandTurn Turn, bool Tells, bool IsMoreThanWanted)
{
    // A move of five standard uncertainties tells the response to a fifth, as well as the frame's description does.
    private const double Clear = 5;

    // With two, the moves of either direction lie four apart.
    private const double Told = 2;

    // Half of the 8 mm from the middle at which a mark is still on a common target.
    private const double FarthestMove = 4;

    // 11°: twice the lost motion that is expected of a screw.
    private const double Least = 1.0 / 32;

    private static readonly double[] s_parts = [1.0 / 64, Least, 1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2];

    /// <summary>The smallest part of a turn that shows clearly, but no more than is wanted, so that the wrong way at most doubles this screw's share of the slope; at least 1/32.</summary>
    /// <param name="wanted">The turn that the slope asks for, rounded.</param>
    /// <param name="slope">The slope, of whose uncertainty that of its change is taken: for one more far mark it is less.</param>
    /// <param name="response">The screw's.</param>
    /// <param name="far">The longest path; null when not known. The mark there is moved by 4 mm at most, or by 1/64 turn.</param>
    public static FirstTurn Of(HandTurn wanted, Slope slope, ScrewResponse response, Length? far)
    {
        double perTurn = Math.Sqrt((response.U * response.U) + (response.V * response.V)), uncertainty = slope.Covariance.Ellipse(1).SemiMajor;
        double Shown(double turns) => Math.Max(0, turns - (response.Backlash.Degrees / 360)) * perTurn;
        double most = far is { } path ? FarthestMove / (perTurn * path.Millimetres / 1000) : double.PositiveInfinity;
        double part = s_parts.FirstOrDefault(p => p > Least && Shown(p) >= Clear * uncertainty, s_parts[^1]);
        double turns = Math.Max(Least, Math.Min(part, Math.Abs(wanted.Turns)));
        if (turns > most)
            turns = s_parts.LastOrDefault(p => p <= most, s_parts[0]);
        return new(HandTurn.Nearest(turns, 0), Shown(turns) >= Told * uncertainty, turns > Math.Abs(wanted.Turns));
    }
}
