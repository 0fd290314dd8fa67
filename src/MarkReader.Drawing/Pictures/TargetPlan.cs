using System.Globalization;
using MarkReader.Drawing.Overlays;
using MarkReader.Drawing.Pictures.Parts;
using MarkReader.Quantities;
using SkiaSharp;

namespace MarkReader.Drawing.Pictures;

/// <summary>The station that a mark was made at.</summary>
public enum MarkRole
{
    Near,
    Far,
}

/// <summary>A mark of a leg.</summary>
/// <param name="Number">Counts the leg's marks from 1.</param>
/// <param name="Counts">False for a mark that a later change has made stale.</param>
public sealed record PlannedMark(int Number, MarkRole Role, MeasuredPoint At, bool Counts);

/// <summary>The face of a leg's target in the card frame, as one looks at the tape: its marks, the aim point, and where the next mark should lie.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Marks">In the order of time.</param>
public sealed record TargetPlan(string Title, IReadOnlyList<PlannedMark> Marks) : IPicture
{
    private const double Left = 40, Top = 28, Side = 272, Farthest = 2.5;

    /// <summary>The aim point; null while it is not known.</summary>
    public MeasuredPoint? Aim { get; init; }

    /// <summary>The region about the aim point in which the far mark is good enough; null when none is stated.</summary>
    public Ellipse? Tolerance { get; init; }

    /// <summary>The places at which the next mark may lie: more than one while the sense of a screw is open.</summary>
    public IReadOnlyList<MeasuredPoint> Expected { get; init; } = [];

    /// <summary>The mark that is to move: arrows lead from it to <see cref="Expected"/> or else to the aim point. Null: no arrow.</summary>
    public CardPoint? Moving { get; init; }

    /// <summary>Distance of the moving mark from the aim point.</summary>
    public Length? ToGo { get; init; }

    /// <summary>The same when the leg was begun.</summary>
    public Length? AtFirst { get; init; }

    public PictureStyle Style { get; init; } = PictureStyle.Default;

    public double Width => 320;

    public double Height => Top + Side + 20 + KeyOf().Height + (ToGo is null ? 4 : 26);

    /// <summary>The part of the picture that shows the target; the grid's numbers stand outside.</summary>
    public static PixelBox Inside { get; } = new(Left, Top, Left + Side, Top + Side);

    /// <summary>Where card points lie in the picture.</summary>
    public CardPlane Plane
    {
        get
        {
            CardPoint[] points = Core();
            double half = Half(points);
            // Earlier marks are shown where that does not make all else small.
            (double midU, double midV) = Middle(points);
            points = [.. points, .. Marks.Select(m => m.At.Point).Where(p => Math.Max(Math.Abs(p.U - midU), Math.Abs(p.V - midV)) <= Farthest * half)];
            half = Half(points);
            points = [.. points, .. Regions().Where(r => r.Ellipse.SemiMajor <= (ReferenceEquals(r.Ellipse, Tolerance) ? 4 : 1.5) * half).SelectMany(r => r.Ellipse.Outline(r.Centre, 24))];
            (double u, double v) = Middle(points);
            return new(new(u, v), new(Left + (Side / 2), Top + (Side / 2)), Side / 2 / (1.15 * Half(points)));
        }
    }

    void IPicture.Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.White);
        Ink ink = new(canvas);
        CardPlane plane = Plane;
        ink.Text(Title, new(8, 19), new(Ink.Black, Ink.Large, Bold: true));
        PixelBox room = Inside;
        double step = PlanGrid.Draw(ink, plane, room, Style.Numbers);
        canvas.Save();
        canvas.ClipRect(new SKRect((float)Left, (float)Top, (float)(Left + Side), (float)(Top + Side)));
        DrawInside(ink, plane, room);
        canvas.Restore();
        ink.Path([new(room.Left, room.Top), new(room.Right, room.Top), new(room.Right, room.Bottom), new(room.Left, room.Bottom)], new(Ink.Grey, 1), closed: true);

        double y = Top + Side + 20;
        Key key = KeyOf(step);
        key.Draw(ink, 8, y);
        if (ToGo is { } toGo)
        {
            string words = AtFirst is { } first
                ? PictureWords.Fill(Style.Words.ToGoAtFirst, Style.Numbers.Measured(toGo), Style.Numbers.Measured(first))
                : PictureWords.Fill(Style.Words.ToGo, Style.Numbers.Measured(toGo));
            ink.Text(words, new(8, y + key.Height + 17), new(Ink.Black, Ink.Large, Bold: true));
        }
    }

    private CardPoint[] Core()
    {
        CardPoint[] core =
        [
            .. Marks.Where(m => m.Counts).Select(m => m.At.Point),
            .. Aim is null ? [] : new[] { Aim.Point },
            .. Expected.Select(e => e.Point),
            .. Moving is { } moving ? new[] { moving } : [],
        ];
        return core.Length > 0 ? core : [.. Marks.Select(m => m.At.Point).DefaultIfEmpty()];
    }

    private static (double U, double V) Middle(CardPoint[] points) =>
        ((points.Min(p => p.U) + points.Max(p => p.U)) / 2, (points.Min(p => p.V) + points.Max(p => p.V)) / 2);

    private static double Half(CardPoint[] points) => Math.Max(
        0.3, Math.Max(points.Max(p => p.U) - points.Min(p => p.U), points.Max(p => p.V) - points.Min(p => p.V)) / 2);

    private IEnumerable<(Ellipse Ellipse, CardPoint Centre)> Regions()
    {
        if (Aim is { } aim)
            yield return (aim.Covariance.Ellipse95(), aim.Point);
        if (Aim is { } about && Tolerance is { } tolerance)
            yield return (tolerance, about.Point);
        foreach (MeasuredPoint expected in Expected)
            yield return (expected.Covariance.Ellipse95(), expected.Point);
    }

    private void DrawInside(Ink ink, CardPlane plane, PixelBox room)
    {
        if (Aim is { } centre && Tolerance is { } tolerance)
        {
            ink.Area(plane.Outline(tolerance, centre.Point), Ink.Clear(Ink.Green, 0.12));
            ink.Path(plane.Outline(tolerance, centre.Point), new(Ink.Green, 1), closed: true);
        }

        foreach (PlannedMark mark in Marks.Where(m => !m.Counts))
            Sign(ink, plane, mark, Ink.Pale);
        foreach (MeasuredPoint expected in Expected)
        {
            ink.Path(plane.Outline(expected.Covariance.Ellipse95(), expected.Point), new(Ink.Green, 1.8, Dashed: true), closed: true);
            ink.Disc(plane.Place(expected.Point), 2.2, Ink.Green);
        }

        if (Aim is { } aim)
        {
            Ellipse region = aim.Covariance.Ellipse95();
            ink.Area(plane.Outline(region, aim.Point), Ink.Clear(Ink.Black, 0.08));
            ink.Path(plane.Outline(region, aim.Point), new(Ink.Black, 1.3), closed: true);
        }

        foreach (PlannedMark mark in Marks.Where(m => m.Counts))
            Sign(ink, plane, mark, null);
        if (Aim is { } cross)
            Signs.Aim(ink, plane.Place(cross.Point));
        foreach ((PixelPoint from, PixelPoint to) in Arrows(plane))
            ink.Arrow(from, to, new(Ink.Black, 2));
        Numbers(ink, plane, room);
    }

    private IEnumerable<(PixelPoint From, PixelPoint To)> Arrows(CardPlane plane)
    {
        if (Moving is not { } from)
            return [];
        IEnumerable<CardPoint> to = Expected.Count > 0 ? Expected.Select(e => e.Point) : Aim is { } aim ? [aim.Point] : [];
        return to.Select(t => (plane.Place(from), plane.Place(t))).Where(a => a.Item1.DistanceTo(a.Item2) > 4);
    }

    private void Numbers(Ink ink, CardPlane plane, PixelBox room)
    {
        Callouts callouts = new(ink, room.Grown(-2));
        foreach (PlannedMark mark in Marks)
            callouts.Keep(plane.Place(mark.At.Point), 6);
        if (Aim is { } aim)
            callouts.Keep(plane.Place(aim.Point), 7);
        foreach ((PixelPoint from, PixelPoint to) in Arrows(plane))
            callouts.Keep(from, to);

        foreach (PlannedMark mark in Marks.Where(m => room.Holds(plane.Place(m.At.Point))).OrderByDescending(m => m.Counts))
            callouts.Place(mark.Number.ToString(CultureInfo.InvariantCulture), plane.Place(mark.At.Point), Signs.Reach, new(mark.Counts ? Ink.Black : Ink.Grey, Ink.Letters, Bold: mark.Counts));
    }

    private static void Sign(Ink ink, CardPlane plane, PlannedMark mark, SKColor? colour)
    {
        if (mark.Role == MarkRole.Near)
            Signs.Near(ink, plane.Place(mark.At.Point), colour);
        else
            Signs.Far(ink, plane.Place(mark.At.Point), colour);
    }

    private Key KeyOf(double? step = null)
    {
        PictureWords words = Style.Words;
        List<KeyItem> items = [];
        if (Marks.Any(m => m.Role == MarkRole.Near))
            items.Add(new((ink, at) => Signs.Near(ink, at), words.Near));
        if (Marks.Any(m => m.Role == MarkRole.Far))
            items.Add(new((ink, at) => Signs.Far(ink, at), words.Far));
        if (Aim is not null)
            items.Add(new((ink, at) => Signs.Aim(ink, at, Signs.Reach), words.Aim));
        if (Expected.Count > 0)
            items.Add(new(Signs.Expected, words.Expected));
        if (Aim is not null && Tolerance is not null)
            items.Add(new(PlanGrid.Tolerance, words.Tolerance));
        items.Add(new(PlanGrid.Sign, PictureWords.Fill(words.Grid, Style.Numbers.Round(Length.FromMillimetres(step ?? PlanGrid.Step(Plane, Style.Numbers))))));
        if (Marks.Any(m => !m.Counts))
            items.Add(new((ink, at) => Signs.Near(ink, at, Ink.Pale), words.Earlier));
        return new(Width - 16, items);
    }
}
