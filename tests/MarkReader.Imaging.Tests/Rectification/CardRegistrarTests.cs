using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Pipeline;
using MarkReader.Imaging.Rectification;
using MarkReader.Quantities;
using MarkReader.Rendering;
using MarkReader.Rendering.Optics;
using MarkReader.Rendering.Specs;
using MarkReader.Scenes.Output;

namespace MarkReader.Imaging.Tests.Rectification;

public sealed class CardRegistrarTests
{
    [Theory]
    [InlineData(1.2)]
    [InlineData(-0.9)]
    public void A_card_bent_to_a_cylinder_is_seen_as_bent_and_its_middle_is_where_it_is(double sagitta)
    {
        SceneSpec spec = Support.Scenes.Small(21);
        spec = spec with { Card = spec.Card! with { Curvature = 2 * sagitta / (25.0 * 25), CurveDegrees = 0 } };
        RegisteredCard card = Register(spec);
        Assert.InRange(card.View.Sagitta, 0.8 * Math.Abs(sagitta), 1.25 * Math.Abs(sagitta));
        Camera camera = SceneRenderer.CameraOf(spec);
        foreach (CardPoint p in (CardPoint[])[new(0, 0), new(8, -5), new(-10, 10)])
            Assert.InRange(card.View.ToCard(camera.ToPhoto(p)).DistanceTo(p), 0, 0.01);
    }

    [Fact]
    public void A_flat_card_through_an_ordinary_lens_is_taken_for_flat_and_undistorted()
    {
        RegisteredCard card = Register(Support.Scenes.Small(22));
        Assert.InRange(card.View.Sagitta, 0, 0.05);
        Assert.InRange(Math.Abs(card.View[ViewParameters.K1]), 0, 0.01);
    }

    [Fact]
    public void A_wide_lens_is_seen_in_the_card_itself()
    {
        SceneSpec spec = Support.Scenes.Small(23);
        spec = spec with { Camera = spec.Camera with { FocalLength = 640, K1 = -0.12 } };
        RegisteredCard card = Register(spec);
        Camera camera = SceneRenderer.CameraOf(spec);
        foreach (CardPoint p in (CardPoint[])[new(0, 0), new(11, -5), new(-10, 12)])
            Assert.InRange(card.View.ToCard(camera.ToPhoto(p)).DistanceTo(p), 0, 0.01);
    }

    private static RegisteredCard Register(SceneSpec spec)
    {
        byte[] bytes = Scene.Render(spec).Photo;
        PhotoHeader header = PhotoHeaderReader.Read(bytes).ValueOrThrow();
        using GreyPhoto photo = PhotoDecoder.DecodeGrey(bytes, header).ValueOrThrow();
        FoundCards found = CardFinder.Find(photo, new StageTrace(null)).ValueOrThrow();
        return CardRegistrar.Register(photo, found.InOrder[0]).ValueOrThrow();
    }
}
