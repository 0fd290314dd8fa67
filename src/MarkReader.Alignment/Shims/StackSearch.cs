using MarkReader.Quantities;

namespace MarkReader.Alignment.Shims;

/// <summary>The best stack of shims from a stock.</summary>
/// <remarks>
/// Exact: the fewest pieces for every height on a grid of one micrometre, item after item (the change-making problem with
/// limited coins; S. Martello and P. Toth, Knapsack Problems, Wiley 1990, chapter 5). Time and memory are bounded by
/// <see cref="StockChecks"/> and <see cref="DefaultMostPieces"/>.
/// </remarks>
public static class StackSearch
{
    /// <summary>Most pieces of a stack unless the call says otherwise: more of them do not lie firmly.</summary>
    public const int DefaultMostPieces = 8;

    private const int MostPiecesEver = 50;
    private const int PerMillimetre = 1000;
    private const byte Unreached = byte.MaxValue;

    // Micrometres: sums of decimal thicknesses and limits are compared with this allowed for.
    private const double Rounding = 1e-6;

    /// <param name="stock">What the user has.</param>
    /// <param name="wanted">The height to reach; zero or more.</param>
    /// <param name="tolerance">How far from it a stack's height may be.</param>
    /// <param name="mostPieces">Most pieces of a stack, 1 to 50.</param>
    public static Outcome<StackAdvice> Best(IReadOnlyList<StockItem> stock, Length wanted, Length tolerance, int mostPieces = DefaultMostPieces)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(mostPieces, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mostPieces, MostPiecesEver);
        if (StockChecks.All(stock, wanted, tolerance) is { } wrong)
            return wrong;
        // Above twice the height no shim at all is nearer, unless the tolerance reaches farther.
        int highest = (int)Math.Ceiling((wanted.Millimetres + Math.Max(wanted.Millimetres, tolerance.Millimetres)) * PerMillimetre) + 1;
        Table table = new(stock, highest, mostPieces);
        int best = Choose(table.Fewest, wanted.Millimetres * PerMillimetre, tolerance.Millimetres * PerMillimetre);
        bool reached = Math.Abs(best - (wanted.Millimetres * PerMillimetre)) <= (tolerance.Millimetres * PerMillimetre) + Rounding;
        return new StackAdvice(table.Stack(best), wanted, tolerance, reached);
    }

    private static int Choose(byte[] fewest, double wanted, double tolerance)
    {
        int best = 0;
        for (int height = 1; height < fewest.Length; height++)
        {
            if (fewest[height] != Unreached && Better(height, best))
                best = height;
        }

        return best;

        bool Better(int height, int than)
        {
            double off = Math.Abs(height - wanted), thanOff = Math.Abs(than - wanted);
            (bool reached, bool thanReached) = (off <= tolerance + Rounding, thanOff <= tolerance + Rounding);
            if (reached != thanReached)
                return reached;
            if (reached && fewest[height] != fewest[than])
                return fewest[height] < fewest[than];
            return off < thanOff - Rounding || (off < thanOff + Rounding && fewest[height] < fewest[than]);
        }
    }

    /// <summary>The fewest pieces for each height, and how many of each item they hold.</summary>
    private sealed class Table
    {
        private readonly IReadOnlyList<StockItem> _stock;
        private readonly byte[][] _taken;

        public Table(IReadOnlyList<StockItem> stock, int highest, int mostPieces)
        {
            _stock = stock;
            Fewest = new byte[highest + 1];
            Array.Fill(Fewest, Unreached);
            Fewest[0] = 0;
            _taken = [.. stock.Select(item => Add(Grid(item), Math.Min(item.Count ?? mostPieces, mostPieces), mostPieces))];
        }

        public byte[] Fewest { get; private set; }

        public StackedShims Stack(int height)
        {
            List<StackPart> parts = [];
            for (int i = _stock.Count - 1; i >= 0; i--)
            {
                int taken = _taken[i][height];
                if (taken > 0)
                    parts.Add(new(_stock[i], taken));
                height -= taken * Grid(_stock[i]);
            }

            return new([.. parts.OrderByDescending(p => p.Item.Thickness)]);
        }

        private static int Grid(StockItem item) => (int)Math.Round(item.Thickness.Millimetres * PerMillimetre);

        private byte[] Add(int thickness, int count, int mostPieces)
        {
            byte[] before = Fewest, after = [.. before], taken = new byte[before.Length];
            for (int n = 1; n <= count && n * thickness < before.Length; n++)
            {
                for (int height = n * thickness; height < before.Length; height++)
                {
                    int pieces = before[height - (n * thickness)] + n;
                    if (pieces <= mostPieces && pieces < after[height])
                        (after[height], taken[height]) = ((byte)pieces, (byte)n);
                }
            }

            Fewest = after;
            return taken;
        }
    }
}
