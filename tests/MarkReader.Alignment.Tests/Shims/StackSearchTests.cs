using CsCheck;
using MarkReader.Alignment.Shims;
using MarkReader.Quantities;

namespace MarkReader.Alignment.Tests.Shims;

public sealed class StackSearchTests
{
    private static readonly Gen<(int Micrometres, int? Count)[]> s_stocks = Gen.Select(
        Gen.Int[10, 1500], Gen.Int[1, 4], (t, n) => (t, n == 4 ? (int?)null : n)).Array[1, 4];

    [Fact]
    public void Best_stack_is_that_of_trying_all() =>
        Gen.Select(s_stocks, Gen.Int[0, 5000], Gen.Int[0, 300], Gen.Int[1, 5]).Sample((stock, wanted, tolerance, most) =>
        {
            StackAdvice advice = Best(stock, wanted, tolerance, most);
            (int Pieces, int Off) best = Everything(stock, most)
                .Select(s => (s.Pieces, Off: Math.Abs(s.Height - wanted)))
                .MinBy(s => s.Off <= tolerance ? (0, s.Pieces, s.Off) : (1, s.Off, s.Pieces));
            return advice.Stack.Pieces == best.Pieces
                && Math.Abs(Math.Abs(advice.Difference.Millimetres) - (best.Off / 1000.0)) < 1e-9
                && advice.Reached == (best.Off <= tolerance)
                && advice.Stack.Parts.All(p => p.Count <= (p.Item.Count ?? most));
        });

    [Fact]
    public void One_thick_piece_is_better_than_two_thin_ones_that_come_nearer()
    {
        StackAdvice advice = Best([(500, null), (1040, null)], 1000, 50, 8);
        Assert.Equal(1, advice.Stack.Pieces);
        Assert.Equal(1.04, advice.Stack.Height.Millimetres, 1e-12);
        Assert.True(advice.Reached);
    }

    [Fact]
    public void A_height_that_no_stack_reaches_gets_the_nearest_and_says_so()
    {
        StackAdvice advice = Best([(500, 1), (800, 1)], 1100, 50, 8);
        Assert.False(advice.Reached);
        Assert.Equal(1.3, advice.Stack.Height.Millimetres, 1e-12);
        Assert.Equal(0.2, advice.Difference.Millimetres, 1e-12);
    }

    [Fact]
    public void No_shim_at_all_is_the_nearest_to_a_small_height()
    {
        StackAdvice advice = Best([(500, null)], 200, 50, 8);
        Assert.Empty(advice.Stack.Parts);
        Assert.False(advice.Reached);
        Assert.Equal(-0.2, advice.Difference.Millimetres, 1e-12);
    }

    [Fact]
    public void Pieces_of_one_item_share_their_error_and_those_of_different_items_do_not()
    {
        StackAdvice advice = Best([(500, 2), (800, 1)], 1800, 1, 8, uncertainty: 0.03);
        Assert.Equal(3, advice.Stack.Pieces);
        Assert.Equal(0.03 * Math.Sqrt(4 + 1), advice.Stack.Uncertainty.Millimetres, 1e-12);
    }

    [Fact]
    public void A_large_stock_is_searched_exactly()
    {
        // 64 kinds, as many as needed of each; only one pair makes 19.937 mm.
        (int, int?)[] stock = [.. Enumerable.Range(0, 62).Select(i => (5000 + (10 * i), (int?)null)), (9963, 1), (9974, 1)];
        StackAdvice advice = Best(stock, 19937, 0, 2);
        Assert.True(advice.Reached);
        Assert.Equal(["9974", "9963"], advice.Stack.Parts.Select(p => p.Item.Name));
    }

    public static TheoryData<string, double[], int?, double, double, double> Refused => new()
    {
        { "SHIM_STOCK_EMPTY", [], null, 0.01, 1, 0.05 },
        { "SHIM_STOCK_TOO_LARGE", [.. Enumerable.Repeat(0.5, 65)], null, 0.01, 1, 0.05 },
        { "SHIM_HEIGHT_INVALID", [0.5], null, 0.01, -0.1, 0.05 },
        { "SHIM_HEIGHT_INVALID", [0.5], null, 0.01, 1e9, 0.05 },
        { "SHIM_TOLERANCE_INVALID", [0.5], null, 0.01, 1, -0.05 },
        { "SHIM_THICKNESS_INVALID", [0.5, 0], null, 0, 1, 0.05 },
        { "SHIM_THICKNESS_INVALID", [1e-9], null, 0, 1, 0.05 },
        { "SHIM_UNCERTAINTY_INVALID", [0.5], null, 0.6, 1, 0.05 },
        { "SHIM_COUNT_INVALID", [0.5], -1, 0.01, 1, 0.05 },
        { "SHIM_COUNT_INVALID", [0.5], int.MaxValue, 0.01, 1, 0.05 },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Hostile_stocks_are_refused(string code, double[] thickness, int? count, double uncertainty, double wanted, double tolerance)
    {
        Outcome<StackAdvice> outcome = StackSearch.Best(
            [.. thickness.Select(t => new StockItem("x", Some.Mm(t), Some.Mm(uncertainty), count))], Some.Mm(wanted), Some.Mm(tolerance));
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.Equal(code, failure.Code.Name);
    }

    private static StackAdvice Best((int Micrometres, int? Count)[] stock, int wanted, int tolerance, int most, double uncertainty = 0) => StackSearch.Best(
        [.. stock.Select(s => new StockItem($"{s.Micrometres}", Some.Mm(s.Micrometres / 1000.0), Some.Mm(uncertainty), s.Count))],
        Some.Mm(wanted / 1000.0),
        Some.Mm(tolerance / 1000.0),
        most).ValueOrThrow();

    private static IEnumerable<(int Pieces, int Height)> Everything((int Micrometres, int? Count)[] stock, int most)
    {
        IEnumerable<(int Pieces, int Height)> all = [(0, 0)];
        foreach ((int micrometres, int? count) in stock)
            all = all.SelectMany(s => Enumerable.Range(0, Math.Min(count ?? most, most) + 1).Select(n => (s.Pieces + n, s.Height + (n * micrometres))));
        return all.Where(s => s.Pieces <= most);
    }
}
