using System.CommandLine;
using System.Globalization;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options that say which machine is practised on.</summary>
internal sealed class PracticeOptions
{
    private const int MostSeeds = 1_000_000;

    private readonly Option<string> _seed = new("--seed") { Description = "Number of the machine, 0 to 999999; the same number gives the same machine (default: drawn)", HelpName = "N" };
    private readonly Option<string> _slope = Number("--slope", "Largest slope in each leg on each axis, mrad", PracticeRequest.UsualSlope, "MRAD");
    private readonly Option<string> _twist = Number("--twist", "Largest height of one corner of the frame, high or low, mm", 0);
    private readonly Option<string> _bend = Number("--bend", "Bend of both rails in the middle, mm", 0);
    private readonly Option<string> _mark = Number("--mark", "Scatter of the marks (standard deviation), mm", PracticeRequest.UsualMark);
    private readonly Option<string> _tolerance = Number("--tolerance", "Largest distance of two marks over the bed, and of the beam from the entry hole's centre, mm", PracticeRequest.UsualTolerance);
    private readonly Option<string> _stock = CommonOptions.Stock();

    public IEnumerable<Option> All => [_seed, _slope, _twist, _bend, _mark, _tolerance, _stock];

    public Outcome<PracticeMachineChoice> Read(ParseResult call)
    {
        Numbers numbers = new(call);
        double? seed = numbers.ReadOptional(_seed);
        double slope = numbers.Read(_slope, PracticeRequest.UsualSlope), twist = numbers.Read(_twist, 0), bend = numbers.Read(_bend, 0);
        double mark = numbers.Read(_mark, PracticeRequest.UsualMark), tolerance = numbers.Read(_tolerance, PracticeRequest.UsualTolerance);
        Stock? stock = numbers.ReadOptional(_stock, StockText.Read);
        if (numbers.Wrong is { } wrong)
            return wrong;
        if (seed is { } given && !(given >= 0 && given < MostSeeds && given == Math.Floor(given)))
            return new Failure(CommandLineFailures.SeedInvalid, "--seed is not a whole number from 0 to 999999", "give the number of the machine, like --seed 7");
        int number = (int)(seed ?? Random.Shared.Next(MostSeeds));
        return new PracticeMachineChoice(new PracticeRequest(number, slope, twist, bend, mark, tolerance), stock ?? new Stock(UsualStock.Washers));
    }

    private static Option<string> Number(string name, string what, double usual, string unit = "MM") =>
        CommonOptions.Number(name, string.Create(CultureInfo.InvariantCulture, $"{what} (default {usual})"), unit);
}

/// <summary>The machine to practise on and the shims at hand.</summary>
internal sealed record PracticeMachineChoice(PracticeRequest Request, Stock Stock);
