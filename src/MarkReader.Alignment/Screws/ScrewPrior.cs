using MarkReader.Alignment.Frames;

namespace MarkReader.Alignment.Screws;

/// <summary>The state of a leg before its first event, for each way in which its screws may push.</summary>
internal static class ScrewPrior
{
    /// <summary>Standard deviations of a beam of which nothing is known: place (mm) and slope (mrad). Wide against any leg that reaches its target.</summary>
    private const double AnyPlace = 30, AnySlope = 30;

    // Where the beam meets the mirror is known to about a third of the frame, and so is the shift that a turn adds to its swing.
    private const double WalkKnown = 0.4, WalkSideUnknown = 1.1, LeastWalk = 0.03;

    // Without a pivot the two ends of each axis are screws, both off their places.
    private const double WithoutPivot = 2;

    /// <summary>Probability that a screw does not act as its frame's description says: another corner, another lever. So rare that it explains a first move and no later one.</summary>
    private const double Otherwise = 3e-4;

    /// <summary>
    /// One hypothesis for every combination of senses: each screw pushes (+1), pulls (−1) or acts otherwise (0). The sense of a screw
    /// with a known response is in that response.
    /// </summary>
    public static IReadOnlyList<Hypothesis> Of(LegModel model, StateLayout layout)
    {
        List<(int[] Senses, double Weight)> all = [([], 1)];
        foreach (ScrewGeometry screw in model.Screws)
        {
            (int, double)[] senses = Known(model, screw) is null
                ? [(1, (1 - Otherwise) / 2), (-1, (1 - Otherwise) / 2), (0, Otherwise)]
                : [(1, 1 - Otherwise), (0, Otherwise)];
            all = [.. all.SelectMany(a => senses, (a, s) => ((int[])[.. a.Senses, s.Item1], a.Weight * s.Item2))];
        }

        return [.. all.Select(a => new Hypothesis(a.Senses, Start(model, layout, a.Senses), a.Weight))];
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
        if (sense == 0)
        {
            // Any direction, and up to a few times the size that the description gives.
            (uu, uv, vv) = (g.Slope * g.Slope, 0, g.Slope * g.Slope);
        }
        else if (Known(model, g) is { } known)
        {
            (u, v) = (known.U, known.V);
            (uu, uv, vv) = (known.Uncertainty * known.Uncertainty, 0, known.Uncertainty * known.Uncertainty);
            walkSense = (u * g.SlopeU) + (v * g.SlopeV) < 0 ? -1 : 1;
        }
        else
        {
            // Along the response the lever arm; across it the direction of the axis, which tilts (u/2, v/(2·cos θ)) by its angle.
            double cos = Math.Cos(model.Frame.Incidence.Radians), across = Math.Tan(model.Habits.Axis.Radians) * (model.Frame.Screws.Count == 3 ? WithoutPivot : 1);
            (double crossU, double crossV) = (-across * v / cos, across * u * cos);
            double along = Math.Pow(model.Habits.Arm, 2);
            (uu, uv, vv) = ((along * u * u) + (crossU * crossU), (along * u * v) + (crossU * crossV), (along * v * v) + (crossV * crossV));
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
