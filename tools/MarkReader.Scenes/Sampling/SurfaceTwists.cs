using MarkReader.Cards;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;

namespace MarkReader.Scenes.Sampling;

/// <summary>Scenes that differ by tape, writing, dirt and what lies round the card.</summary>
internal static class SurfaceTwists
{
    public static SceneSpec Material(SceneSpec s, Random r, TapeMaterial material)
    {
        TapeSpec[] tapes = TidyScene.Tapes(r, material);
        return s with { Tapes = tapes, Burns = TidyScene.Burns(r, tapes, r.Pick(1, 2, 3)) };
    }

    /// <summary>A long strip at a slant, over some of the markers.</summary>
    public static SceneSpec TapeOver(SceneSpec s, Random r)
    {
        TapeMaterial material = r.Pick(TapeMaterial.CreamTape, TapeMaterial.BlueTape, TapeMaterial.WhitePaper);
        TapeSpec tape = new(material, 0, 0, r.Between(34, 60), r.Pick(19.0, 24.0), r.Pick(0, 90) + r.Between(-12, 12), r.Between(0.02, 0.08));
        return s with { Tapes = [tape], Burns = TidyScene.Burns(r, [tape with { Width = tape.Width - 4 }], r.Pick(1, 2, 3)) };
    }

    /// <summary>Lines, crosses and letters on the tape; some run through a mark.</summary>
    public static SceneSpec Pen(SceneSpec s, Random r)
    {
        List<PenSpec> pens = [];
        PenColour colour = r.Pick(PenColour.Blue, PenColour.Black, PenColour.Red);
        double width = r.Between(0.35, 0.8);
        int count = r.Next(2, 6);
        for (int i = 0; i < count; i++)
        {
            BurnSpec mark = s.Burns[r.Next(s.Burns.Count)];
            bool through = i == 0 && r.Chance(0.6);
            (double u, double v) = through ? (mark.U, mark.V) : (r.Between(-10, 10), r.Between(-10, 10));
            pens.AddRange(r.Next(3) switch
            {
                0 => [PenStrokes.Line(r, colour, width, u, v)],
                1 => PenStrokes.Cross(r, colour, width, u, v),
                _ => PenStrokes.Letter(r, colour, width, u, v),
            });
        }

        return s with { Pens = pens };
    }

    /// <summary>All markers but three (or four) burnt, dirty or covered.</summary>
    public static SceneSpec Dirty(SceneSpec s, Random r)
    {
        CardMarker[] markers = [.. CardKinds.Find(s.Card!.Kind)!.Markers];
        r.Shuffle(markers);
        BlotSpec[] blots = [.. markers.Skip(r.Pick(3, 3, 4)).Select(m => new BlotSpec(
            m.Centre.U + r.Between(-2, 2), m.Centre.V + r.Between(-2, 2), r.Between(3.2, 5), r.Between(0.3, 1.5), r.Between(1.5, 4), r.Chance(0.4)))];
        return s with { Blots = blots };
    }

    /// <summary>Screw heads, holes and dots round the card, and dots on its border.</summary>
    public static SceneSpec Screws(SceneSpec s, Random r)
    {
        List<ScrewSpec> screws = [];
        for (int i = 0; i < 9; i++)
        {
            double a = (i + r.Between(-0.3, 0.3)) * 2 * Math.PI / 9;
            double far = r.Between(38, 62);
            screws.Add(new(far * Math.Cos(a), far * Math.Sin(a), r.Between(0.8, 4), r.Chance(0.5)));
        }

        PenSpec[] dots = [.. Enumerable.Range(0, 3).Select(_ => PenStrokes.Dot(PenColour.Black, r.Between(0.6, 2), r.Pick(-1, 1) * r.Between(13.3, 24), r.Pick(-1, 1) * r.Between(13.3, 24)))];
        return s with { Target = new(s.Target.Material, Screws: screws), Pens = dots };
    }

    public static SceneSpec SecondCard(SceneSpec s, Random r)
    {
        double a = r.Between(0, 2 * Math.PI);
        double far = r.Between(60, 75);
        return s with
        {
            SecondCard = new("plate", far * Math.Cos(a), far * Math.Sin(a), r.Between(-180, 180)),
            Target = new(s.Target.Material),
            Pose = s.Pose with { PixelsPerMm = s.Pose.PixelsPerMm * 0.6, CentreX = 0.5 - (0.12 * Math.Cos(a)), CentreY = 0.5 + (0.12 * Math.Sin(a)) },
        };
    }
}
