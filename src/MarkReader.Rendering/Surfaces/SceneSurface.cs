using MarkReader.Rendering.Specs;

namespace MarkReader.Rendering.Surfaces;

/// <summary>Everything that lies in the card's plane, as albedo at a place. Textures are taken once for a pixel, outlines for each of its samples.</summary>
internal sealed class SceneSurface
{
    private readonly TargetSurface _target;
    private readonly PrintedCard[] _cards;
    private readonly Strip[] _strips;
    private readonly Burn[] _burns;
    private readonly Pen[] _pens;
    private readonly BlotSpec[] _blots;
    private readonly int _seed;
    private readonly double _reach;
    private readonly bool _plain;
    private readonly double _largestEven;

    public SceneSurface(SceneSpec spec)
    {
        _seed = spec.Seed;
        _plain = spec.Plain;
        _target = new(spec.Target, spec.Seed);
        List<PrintedCard> cards = [];
        if (spec.SecondCard is not null)
            cards.Add(new(spec.Card ?? new(), spec.SecondCard, spec.Seed + 71));
        if (spec.Card is not null)
            cards.Add(new(spec.Card, null, spec.Seed + 70));
        _cards = [.. cards];
        _largestEven = _cards.Select(c => c.LargestEven).DefaultIfEmpty(0.1).Min();
        _strips = [.. spec.Tapes.Select((t, i) => new Strip(t, spec.Seed + 100 + i))];
        _burns = [.. spec.Burns.Select((b, i) => new Burn(spec.Plain ? b with { CharTexture = 0 } : b, spec.Seed + 200 + i))];
        _pens = [.. spec.Pens.Select(p => new Pen(p))];
        _blots = [.. spec.Blots];
        _reach = 1 + Math.Max(
            _cards.Select(c => c.Reach).Concat(_strips.Select(s => s.Reach)).Concat(_pens.Length > 0 ? [60] : []).DefaultIfEmpty(0).Max(),
            Math.Max(
                spec.Burns.Select((b, i) => Math.Max(Math.Abs(b.U), Math.Abs(b.V)) + _burns[i].Reach).DefaultIfEmpty(0).Max(),
                spec.Blots.Select(b => Math.Max(Math.Abs(b.U), Math.Abs(b.V)) + b.Radius + (4 * b.Softness)).DefaultIfEmpty(0).Max()));
    }

    /// <summary>Whether anything but the bare target can be here.</summary>
    public bool IsDetailed(double u, double v) => Math.Abs(u) < _reach && Math.Abs(v) < _reach;

    public Rgb Target(double u, double v) => _plain ? _target.Albedo(0, 0) : _target.Albedo(u, v);

    /// <summary>Whether one sample does for a pixel of this size (mm): no outline, ink edge, burn, line or blot in it.</summary>
    public bool IsUniform(double u, double v, double size)
    {
        const double Near = 1.2;
        if (size > _largestEven)
            return false;
        foreach (PrintedCard card in _cards)
        {
            double inside = card.Inside(u, v);
            if (Math.Abs(inside) < Near || (inside > 0 && !card.IsEven(u, v, size)))
                return false;
        }

        foreach (Strip strip in _strips)
        {
            if (Math.Abs(strip.Inside(u, v)) < Near)
                return false;
        }

        foreach (Burn burn in _burns)
        {
            if (Math.Max(Math.Abs(u - burn.Spec.U), Math.Abs(v - burn.Spec.V)) < burn.Reach + Near)
                return false;
        }

        foreach (Pen pen in _pens)
        {
            if (pen.IsNear(u, v, Near))
                return false;
        }

        foreach (BlotSpec blot in _blots)
        {
            if (Math.Max(Math.Abs(u - blot.U), Math.Abs(v - blot.V)) < (1.6 * blot.Radius) + (4 * blot.Softness) + Near)
                return false;
        }

        return true;
    }

    public Pixel At(double u, double v) => _plain ? new(this, 0, 0) : new(this, u, v);

    /// <summary>The materials' textures at one pixel, taken when first needed.</summary>
    internal ref struct Pixel(SceneSurface surface, double u0, double v0)
    {
        private Rgb? _target;
        private Rgb? _card0;
        private Rgb? _card1;
        private Rgb? _strip0;
        private Rgb? _strip1;
        private Rgb? _strip2;
        private Rgb? _strip3;

        public Rgb Sample(double u, double v, double ut, double vt)
        {
            Rgb c = default;
            bool covered = false;
            for (int i = surface._cards.Length - 1; i >= 0; i--)
            {
                double inside = surface._cards[i].Inside(u, v);
                if (inside < 0)
                    continue;
                Rgb paper = i == 0 ? _card0 ??= surface._cards[0].Paper(u0, v0) : _card1 ??= surface._cards[1].Paper(u0, v0);
                c = surface._cards[i].Printed(paper, u, v);
                covered = true;
                break;
            }

            if (!covered)
            {
                c = _target ??= surface._target.Albedo(u0, v0);
                foreach (PrintedCard card in surface._cards)
                    c = Contact(card.Inside(u, v), 0.25, c);
            }

            for (int i = 0; i < surface._strips.Length; i++)
            {
                double inside = surface._strips[i].Inside(ut, vt);
                if (inside < 0)
                {
                    c = Contact(inside, 0.15, c);
                    continue;
                }

                Rgb tape = Strip(i);
                float through = surface._strips[i].Translucency;
                c = ((1 - through) * tape) + (through * (tape * c));
            }

            float hole = 0;
            HoleKind kind = HoleKind.None;
            foreach (Burn burn in surface._burns)
            {
                float before = hole;
                burn.Apply(ut, vt, ref c, ref hole);
                if (hole > before)
                    kind = burn.Spec.Hole;
            }

            foreach (Pen pen in surface._pens)
                pen.Apply(ut, vt, ref c);
            if (hole > 0)
                c = Rgb.Mix(c, kind == HoleKind.Dark ? Rgb.Grey(0.015) : Metal(), hole);
            foreach (BlotSpec blot in surface._blots)
                c = surface.Blot(blot, u, v, c);
            return c;
        }

        private readonly Rgb Metal() => (0.62f + (0.16f * Noise.Fractal(u0 * 0.8, v0 * 7, 2, surface._seed + 300))) * new Rgb(1, 0.99f, 0.97f);

        private Rgb Strip(int i)
        {
            switch (i)
            {
                case 0:
                    return _strip0 ??= surface._strips[0].Albedo(u0, v0);
                case 1:
                    return _strip1 ??= surface._strips[1].Albedo(u0, v0);
                case 2:
                    return _strip2 ??= surface._strips[2].Albedo(u0, v0);
                case 3:
                    return _strip3 ??= surface._strips[3].Albedo(u0, v0);
                default:
                    return surface._strips[i].Albedo(u0, v0);
            }
        }

        /// <summary>The thin shadow beside an edge that stands over the surface.</summary>
        private static Rgb Contact(double inside, double width, Rgb c) =>
            inside < -4 * width ? c : (1 - (0.35f * (float)Math.Exp(inside / width))) * c;
    }

    private Rgb Blot(BlotSpec blot, double u, double v, Rgb c)
    {
        double du = u - blot.U;
        double dv = v - blot.V;
        double r = Math.Sqrt((du * du) + (dv * dv));
        if (r > (1.6 * blot.Radius) + (4 * blot.Softness))
            return c;
        r *= 1 + (0.25 * Noise.Fractal(u * 0.35, v * 0.35, 3, _seed + 400));
        float share = (float)Normal.Distribution((blot.Radius - r) / blot.Softness);
        if (blot.Opaque)
            return Rgb.Mix(c, (1 + (0.2f * Noise.At(u * 0.4, v * 0.4, _seed + 410))) * new Rgb(0.09f, 0.085f, 0.08f), share);
        float density = share * (float)blot.Density * (1 + (0.3f * Noise.Fractal(u, v, 2, _seed + 420)));
        return new Rgb(MathF.Exp(-density * 0.85f), MathF.Exp(-density), MathF.Exp(-density * 1.15f)) * c;
    }
}
