using MarkReader.Alignment.Frames;

namespace MarkReader.Alignment.Screws;

/// <summary>The state of a leg before its first event, for each way in which its screws may push.</summary>
internal static class ScrewPrior
{
    /// <summary>Standard deviations of a beam of which nothing is known: place (mm) and slope (mrad). Wide against any leg that reaches its target.</summary>
    private const double AnyPlace = 30, AnySlope = 30;

    // Where the beam meets the mirror is known to about a third of the frame, and so is the shift that a turn adds to its swing.
    private const double WalkKnown = 0.4, WalkSideUnknown = 1.1, LeastWalk = 0.03;

    /// <summary>One hypothesis for every combination of senses; the sense of a screw with a known response is in that response.</summary>
    public static IReadOnlyList<Hypothesis> Of(LegModel model, StateLayout layout)
    {
        bool[] open = [.. model.Screws.Select(s => Known(model, s) is null)];
        List<int[]> senses = [[]];
        foreach (bool both in open)
            senses = [.. senses.SelectMany(s => both ? new int[][] { [.. s, 1], [.. s, -1] } : [[.. s, 1]])];
        return [.. senses.Select(s => new Hypothesis(s, Start(model, layout, s), 1.0 / senses.Count))];
    }

    /// <summary>Where the beam runs becomes open.</summary>
    public static void ForgetLine(GaussianState state)
    {
        foreach (int place in new[] { StateLayout.X0, StateLayout.Y0 })
        {
            state.Forget(place, 0, AnyPlace * AnyPlace);
            state.Forget(place + 1, 0, AnySlope * AnySlope);
        }
    }

    /// <summary>Where a contact rests within its play becomes open: anywhere within b, evenly.</summary>
    public static void ForgetContact(GaussianState state, int screw)
    {
        int b = StateLayout.Backlash(screw);
        state.Forget(StateLayout.Contact(screw), 0, ((state.Mean[b] * state.Mean[b]) + state[b, b]) / 12);
    }

    private static GaussianState Start(LegModel model, StateLayout layout, int[] senses)
    {
        GaussianState state = new(layout.Size);
        ForgetLine(state);
        for (int j = 0; j < senses.Length; j++)
        {
            Response(state, model, j, senses[j]);
            state.Forget(StateLayout.Backlash(j), model.Habits.Backlash.Degrees / 360, Math.Pow(model.Habits.BacklashUncertainty.Degrees / 360, 2));
            ForgetContact(state, j);
        }

        for (int s = 0; s < layout.Paths.Count; s++)
            state.Forget(layout.PathError(s), 0, model.PathUncertainty * model.PathUncertainty);
        return state;
    }

    private static void Response(GaussianState state, LegModel model, int screw, int sense)
    {
        ScrewGeometry g = model.Screws[screw];
        int first = StateLayout.Response(screw);
        double u = sense * g.SlopeU, v = sense * g.SlopeV, uu, uv, vv, walkSense = sense;
        if (Known(model, g) is { } known)
        {
            (u, v) = (known.U, known.V);
            (uu, uv, vv) = (known.Uncertainty * known.Uncertainty, 0, known.Uncertainty * known.Uncertainty);
            walkSense = (u * g.SlopeU) + (v * g.SlopeV) < 0 ? -1 : 1;
        }
        else
        {
            // Along the response the lever arm, across it the direction of the axis.
            double along = Math.Pow(model.Habits.Arm, 2), across = Math.Pow(Math.Tan(model.Habits.Axis.Radians), 2);
            (uu, uv, vv) = ((along * u * u) + (across * v * v), (along - across) * u * v, (along * v * v) + (across * u * u));
        }

        bool side = model.Frame.Fold != FoldSide.Unknown;
        double walkU = (side ? WalkKnown : WalkSideUnknown) * Math.Abs(g.WalkU), walkV = WalkKnown * Math.Abs(g.WalkV);
        state.Forget(first, side ? walkSense * g.WalkU : 0, (walkU * walkU) + (LeastWalk * LeastWalk));
        state.Forget(first + 1, u, uu);
        state.Forget(first + 2, walkSense * g.WalkV, (walkV * walkV) + (LeastWalk * LeastWalk));
        state.Forget(first + 3, v, vv);
        state[first + 1, first + 3] = uv;
    }

    private static KnownResponse? Known(LegModel model, ScrewGeometry screw) => model.Known.FirstOrDefault(k => k.Screw == screw.Screw);
}
