using MathNet.Numerics.Distributions;

namespace MarkReader.Alignment.Screws;

/// <summary>What a turn of a knob does to the state.</summary>
/// <remarks>
/// The contact follows the knob with play b: with the knob at q it rests anywhere within q ± b/2, c being its place there. A turn t in
/// direction σ takes up the slack b/2 + σ·c first and moves the contact by max(0, |t| + e − b/2 − σ·c), e being the error of the hand.
/// Whether the slack is taken up may be open; the maximum is replaced by the line that fits it best in the mean square
/// (statistical linearisation, A. Gelb, Applied Optimal Estimation, 1974, 6.2: mean, slope Φ(w/s) and what is left as noise).
/// The line then changes by response · move, a product, taken linear at the response known after all events.
/// </remarks>
internal static class TurnModel
{
    /// <param name="state">Changed in place.</param>
    /// <param name="screw">Index of the screw.</param>
    /// <param name="turns">Turns of the knob.</param>
    /// <param name="hand">Standard uncertainty of the turn, turns.</param>
    /// <param name="response">The four components of the response at which the product is taken linear.</param>
    public static void Apply(GaussianState state, int screw, double turns, double hand, ReadOnlySpan<double> response)
    {
        if (turns == 0)
            return;
        int first = StateLayout.Response(screw), backlash = StateLayout.Backlash(screw), contact = StateLayout.Contact(screw);
        double sign = Math.Sign(turns);
        Taken taken = Taken.Of(Math.Abs(turns) - Slack(state, screw, sign), SlackVariance(state, screw, sign) + (hand * hand));
        double move = sign * taken.Mean;

        // The contact's move as a linear form of the state.
        double[] byState = new double[state.Size];
        byState[backlash] = -sign * taken.Gain / 2;
        byState[contact] = -taken.Gain;
        List<(int, double[])> forms = [(contact, byState)];
        List<(int, double)> byHand = [(contact, sign * (taken.Gain - 1) * hand)], byRest = [(contact, taken.Rest)];
        for (int i = 0; i < StateLayout.Line; i++)
        {
            double[] form = new double[state.Size];
            form[backlash] = response[i] * byState[backlash];
            form[contact] = response[i] * byState[contact];
            form[first + i] = move;
            forms.Add((i, form));
            byHand.Add((i, sign * taken.Gain * hand * response[i]));
            byRest.Add((i, taken.Rest * response[i]));
            state.Mean[i] += move * state.Mean[first + i];
        }

        state.Mean[contact] += move - turns;
        state.AddForms(forms);
        state.AddNoise(byHand);
        state.AddNoise(byRest);
    }

    /// <summary>Motion that a turn in this direction is expected to lose before the contact moves, turns.</summary>
    public static double Slack(GaussianState state, int screw, double sign) =>
        (state.Mean[StateLayout.Backlash(screw)] / 2) + (sign * state.Mean[StateLayout.Contact(screw)]);

    public static double SlackVariance(GaussianState state, int screw, double sign)
    {
        int b = StateLayout.Backlash(screw), c = StateLayout.Contact(screw);
        return Math.Max(0, (state[b, b] / 4) + (sign * state[b, c]) + state[c, c]);
    }

    // max(0, w) of a normal w: mean, slope on w, and the standard deviation left.
    private readonly record struct Taken(double Mean, double Gain, double Rest)
    {
        public static Taken Of(double w, double variance)
        {
            double s = Math.Sqrt(variance), ratio = w / s;
            double gain = Normal.CDF(0, 1, ratio), density = s * Normal.PDF(0, 1, ratio);
            double mean = (w * gain) + density;
            double second = (((w * w) + variance) * gain) + (w * density);
            return new(mean, gain, Math.Sqrt(Math.Max(0, second - (mean * mean) - (gain * gain * variance))));
        }
    }
}
