using MarkReader.Quantities;

namespace MarkReader.Drawing.Overlays.Parts;

/// <summary>A symbol round a point: what is drawn, where it is in the frame, and the radius it takes up (mm in the card's plane, px in the photo).</summary>
internal sealed record Symbol(CardPoint Point, PixelPoint Image, double Millimetres, double Pixels, IReadOnlyList<OverlayPrimitive> Primitives)
{
    public const string Region = "-region";

    /// <summary>Radius that its lines take up in the photo, px; more than <see cref="Pixels"/> where the card is seen from the side. Its region is not counted.</summary>
    public double Reach => Primitives.OfType<OverlayLine>().Where(l => !l.Part.EndsWith(Region, StringComparison.Ordinal))
        .SelectMany(l => l.Points.Select(p => p.DistanceTo(Image) + (l.Style.Width / 2) + l.Style.Casing)).Append(Pixels).Max();
}

/// <summary>The symbols of near, far and aim, told apart by shape as well as by colour; all lie in the card's plane.</summary>
internal sealed class Symbols(CardSight sight, Pen pen)
{
    private const int CirclePoints = 72;
    private const double AroundMark = 0.65; // radius of a symbol in diameters of its mark: a gap shows the mark's edge
    private const double SmallestMark = 5; // CSS px
    private const double AimRadius = 6; // CSS px, of the diamond
    private const double AimReach = 2.1; // of the arms, in radii
    private const double SquareReach = 1.3; // between the middle of a side and a corner

    /// <summary>A circle.</summary>
    /// <param name="colour">Null: the colour of near marks.</param>
    public Symbol? Near(DrawnMark mark, Colour? colour = null) => AroundOf("near", mark, colour ?? OverlayColours.Near, Circle, 1);

    /// <summary>A square along u and v.</summary>
    /// <param name="colour">Null: the colour of far marks.</param>
    public Symbol? Far(DrawnMark mark, Colour? colour = null) => AroundOf("far", mark, colour ?? OverlayColours.Far, Square, SquareReach);

    /// <summary>A circle, for marks that are neither near nor far.</summary>
    public Symbol? Mark(DrawnMark mark) => AroundOf("mark", mark, OverlayColours.Near, Circle, 1);

    /// <summary>A diamond with four arms, a dot in its middle, and the region that holds the aim point with 95 %.</summary>
    public Symbol? Aim(MeasuredPoint aim)
    {
        if (sight.FindInFrame(aim.Point) is not { } image)
            return null;
        double r = AimRadius * pen.Css / sight.Scale(aim.Point);
        List<OverlayPrimitive> drawn = [.. Region(aim)];
        foreach ((int u, int v) in new[] { (1, 0), (0, 1), (-1, 0), (0, -1) })
        {
            CardPoint[] arm = [aim.Point + new CardVector(r * u, r * v), aim.Point + new CardVector(AimReach * r * u, AimReach * r * v)];
            drawn.Add(new OverlayLine("aim", sight.Trace(aim.Point, arm), false, pen.Bold(OverlayColours.Aim)));
        }

        drawn.Add(Outline("aim", aim.Point, Diamond(aim.Point, r), OverlayColours.Aim));
        drawn.Add(Dot("aim", image, OverlayColours.Aim));
        return new(aim.Point, image, AimReach * r, AimReach * AimRadius * pen.Css, drawn);
    }

    private IEnumerable<OverlayPrimitive> Region(MeasuredPoint aim)
    {
        IReadOnlyList<PixelPoint> ellipse = sight.Trace(aim.Point, aim.Covariance.Ellipse95().Outline(aim.Point, CirclePoints));
        yield return new OverlayArea("aim-region", ellipse, OverlayColours.Aim, 0.3);
        yield return new OverlayLine("aim-region", ellipse, true, pen.Fine(OverlayColours.Aim));
    }

    private Symbol? AroundOf(string part, DrawnMark mark, Colour colour, Func<CardPoint, double, IEnumerable<CardPoint>> shape, double reach)
    {
        CardPoint at = mark.Centre.Point;
        if (sight.FindInFrame(at) is not { } image)
            return null;
        double scale = sight.Scale(at);
        double r = Math.Max(AroundMark * mark.Diameter.Millimetres, SmallestMark * pen.Css / scale);
        List<OverlayPrimitive> drawn = [Outline(part, at, shape(at, r), colour)];
        IReadOnlyList<PixelPoint> ellipse = sight.Trace(at, mark.Centre.Covariance.Ellipse95().Outline(at, CirclePoints));
        PixelBox extent = PixelBox.Around(ellipse);
        if (Math.Max(extent.Width, extent.Height) > 6 * pen.Css)
            drawn.Add(new OverlayLine(part + Symbol.Region, ellipse, true, pen.Fine(colour)));
        else
            drawn.Add(Dot(part, image, colour)); // a smaller ellipse would be a blot
        return new(at, image, reach * r, reach * r * scale, drawn);
    }

    private OverlayLine Outline(string part, CardPoint centre, IEnumerable<CardPoint> shape, Colour colour) =>
        new(part, sight.Trace(centre, shape), true, pen.Bold(colour));

    private OverlayLine Dot(string part, PixelPoint at, Colour colour)
    {
        double r = 0.5 * pen.Css;
        IReadOnlyList<PixelPoint> ring = [at + new PixelVector(-r, 0), at + new PixelVector(0, -r), at + new PixelVector(r, 0), at + new PixelVector(0, r)];
        return new(part, ring, true, new(colour, pen.Css, 0.8 * pen.Css));
    }

    private static IEnumerable<CardPoint> Circle(CardPoint centre, double r) => new Ellipse(r, r, Angle.Zero).Outline(centre, CirclePoints);

    private static IEnumerable<CardPoint> Square(CardPoint centre, double r) =>
        [centre + new CardVector(-r, -r), centre + new CardVector(r, -r), centre + new CardVector(r, r), centre + new CardVector(-r, r)];

    private static IEnumerable<CardPoint> Diamond(CardPoint centre, double r) =>
        [centre + new CardVector(r, 0), centre + new CardVector(0, r), centre + new CardVector(-r, 0), centre + new CardVector(0, -r)];
}
