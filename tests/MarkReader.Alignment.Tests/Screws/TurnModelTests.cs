using MarkReader.Alignment.Screws;

namespace MarkReader.Alignment.Tests.Screws;

/// <summary>The statistical linearisation of lost motion against draws of the play itself.</summary>
public sealed class TurnModelTests
{
    private static readonly StateLayout Layout = new(1, [80, 480]);

    // b and where the contact rests, in turns, as normal as the model takes them.
    private const double B = 0.014, UB = 0.004, UC = 0.005, Hand = 0.01;

    [Theory]
    [InlineData(0.2)]
    [InlineData(-0.2)]
    [InlineData(0.03)]
    [InlineData(-0.01)]
    public void Mean_and_variance_of_the_beam_s_slope_after_a_turn_are_those_of_drawn_play(double turns)
    {
        double[] response = [0, 40, 0, -3];
        GaussianState state = State(response);
        TurnModel.Apply(state, 0, turns, Hand, response);

        Random random = new(7);
        double sum = 0, squares = 0;
        const int Draws = 400_000;
        for (int i = 0; i < Draws; i++)
        {
            double b = B + (UB * Normal(random)), contact = UC * Normal(random), knob = turns + (Hand * Normal(random));
            double sign = Math.Sign(turns), move = sign * Math.Max(0, (sign * knob) - (b / 2) - (sign * contact));
            (sum, squares) = (sum + (40 * move), squares + (1600 * move * move));
        }

        double mean = sum / Draws, variance = (squares / Draws) - (mean * mean);
        Assert.Equal(mean, state.Mean[StateLayout.Sx], 0.005);
        Assert.Equal(1, state[StateLayout.Sx, StateLayout.Sx] / variance, 0.01);
        Assert.Equal(-3.0 / 40 * mean, state.Mean[StateLayout.Sy], 0.001);
    }

    [Fact]
    public void A_second_turn_the_same_way_loses_nothing_and_a_reversal_loses_the_whole_play()
    {
        double[] response = [0, 40, 0, 0];
        GaussianState state = State(response);
        TurnModel.Apply(state, 0, 0.25, Hand, response);
        Assert.Equal(0, TurnModel.Slack(state, 0, 1), 1e-9);
        Assert.Equal(B, TurnModel.Slack(state, 0, -1), 1e-9);
        double before = state.Mean[StateLayout.Sx];
        TurnModel.Apply(state, 0, 0.25, Hand, response);
        Assert.Equal(10, state.Mean[StateLayout.Sx] - before, 1e-6);
        TurnModel.Apply(state, 0, -0.25, Hand, response);
        Assert.Equal(-40 * (0.25 - B), state.Mean[StateLayout.Sx] - before - 10, 1e-6);
    }

    private static GaussianState State(double[] response)
    {
        GaussianState state = new(Layout.Size);
        for (int i = 0; i < response.Length; i++)
            state.Mean[StateLayout.Response(0) + i] = response[i];
        state.Forget(StateLayout.Backlash(0), B, UB * UB);
        state.Forget(StateLayout.Contact(0), 0, UC * UC);
        return state;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
