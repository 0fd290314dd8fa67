using MarkReader.Cards;
using MarkReader.Drawing.Photos;
using MarkReader.Rendering;
using MarkReader.Rendering.Exposure;
using MarkReader.Rendering.Sampling;
using MarkReader.Rendering.Specs;
using MarkReader.Rendering.Surfaces;

namespace MarkReader.Application.Practising;

/// <summary>Photographs a practice machine's tape as a careful person with a phone does.</summary>
public static class PracticePhotographer
{
    /// <summary>3.5 megapixels: about 15 to 24 px/mm on the small card, a third of that on the card for the bed.</summary>
    public const int UsualPixels = 3_500_000;

    /// <summary>About 8 to 12 px/mm on the small card; with fewer, a narrow mark would be a few pixels wide.</summary>
    public const int FewestPixels = 1_000_000;

    /// <summary>What a phone's camera takes.</summary>
    public const int MostPixels = 16_000_000;

    private const int Quality = 92;

    /// <summary>Part of the blank strip between zone and markers that the tape covers.</summary>
    private const double StripShare = 0.4;

    /// <summary>The halo ends short of the markers, mm beyond the core.</summary>
    private const double WidestHalo = 0.5;

    /// <summary>A JPEG of the target from a random place above it, in random good light, with a phone's blur, noise and development.</summary>
    /// <param name="target">The tape with its marks; fresh tape is photographed too.</param>
    /// <param name="random">Decides camera, light and noise.</param>
    /// <param name="pixels">Width times height, about; from <see cref="FewestPixels"/> to <see cref="MostPixels"/>.</param>
    /// <remarks>Equal targets and equally seeded <paramref name="random"/> give equal bytes on one machine.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">That many pixels are not taken.</exception>
    public static byte[] Photograph(TapedTarget target, Random random, int pixels = UsualPixels)
    {
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(random);
        ArgumentOutOfRangeException.ThrowIfLessThan(pixels, FewestPixels);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(pixels, MostPixels);
        SceneSpec scene = Compose(target, random, pixels);
        LinearImage image = SceneRenderer.Render(scene);
        return JpegPhoto.Write(new(image.Width, image.Height), new ToneCurve(scene.Sensor.Tone).ToRgb(image), Quality);
    }

    private static SceneSpec Compose(TapedTarget target, Random random, int pixels)
    {
        Random own = new(target.Number);
        SceneSpec look = TidyScene.Draw(own);
        SceneSpec shot = TidyScene.Draw(random);
        double size = target.Card.OuterSide / CardKinds.Find(CardKinds.Default)!.OuterSide;
        SceneSpec scene = shot with
        {
            Kind = "practice",
            Seed = target.Number,
            NoiseSeed = random.Next(),
            Pose = shot.Pose with { PixelsPerMm = shot.Pose.PixelsPerMm / size },
            Card = look.Card! with { Kind = target.Card.Name },
            // The tidy scene's plates are made for the small card.
            Target = size > 1 ? new(look.Target.Material) : look.Target,
            Tapes = [Tape(target.Card, own)],
            Burns = [.. target.Burns.Select(b => Burn(b, own))],
        };
        return scene.Shrunk(Math.Sqrt((double)pixels / (scene.Camera.Width * scene.Camera.Height)));
    }

    /// <summary>Tape over the whole free zone, short of the markers.</summary>
    private static TapeSpec Tape(CardKind card, Random own)
    {
        double strip = card.Markers.Min(m => Math.Max(Math.Abs(m.Centre.U), Math.Abs(m.Centre.V)) - (m.Side / 2)) - (card.ZoneSide / 2);
        double side = card.ZoneSide + (2 * StripShare * strip);
        return new(
            own.Pick(TapeMaterial.CreamTape, TapeMaterial.CreamTape, TapeMaterial.WhitePaper, TapeMaterial.ThermalPaper),
            0,
            0,
            side,
            side,
            own.Pick(0, 90) + own.Between(-1, 1),
            own.Between(0.02, 0.08));
    }

    /// <summary>Takes the same count of random numbers for every burn, so that a burn's look does not change with those after it.</summary>
    private static BurnSpec Burn(TapeBurn burn, Random own)
    {
        BurnSpec tidy = TidyScene.Burn(own, burn.Place.U, burn.Place.V);
        return BurnSize.Make(tidy with { HaloRadius = Math.Min(tidy.HaloRadius, tidy.Radius + WidestHalo) }, burn.Diameter);
    }
}
