using System.CommandLine;
using MarkReader.Application.Practising;
using MarkReader.Application.Shims;
using MarkReader.CommandLine.Input;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>The options that say which machine is practised on.</summary>
internal sealed class PracticeOptions
{
    private const int MostSeeds = 1_000_000;

    private readonly Option<string> _seed = new("--seed") { Description = CommandTexts.Get("practiceOptions.numberMachineSameNumberGives"), HelpName = "N" };
    private readonly Option<string> _slope = Number("--slope", CommandTexts.Get("practiceOptions.largestSlopeInEachLeg"), PracticeRequest.UsualSlope, "MRAD");
    private readonly Option<string> _twist = Number("--twist", CommandTexts.Get("practiceOptions.largestHeightOneCornerFrame"), 0);
    private readonly Option<string> _bend = Number("--bend", CommandTexts.Get("practiceOptions.bendBothRailsInMiddle"), 0);
    private readonly Option<string> _mark = Number("--mark", CommandTexts.Get("practiceOptions.scatterMarksStandardDeviationMm"), PracticeRequest.UsualMark);
    private readonly Option<string> _tolerance = Number("--tolerance", CommandTexts.Get("practiceOptions.largestDistanceTwoMarksOver"), PracticeRequest.UsualTolerance);
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
            return new Failure(CommandLineFailures.SeedInvalid, CommandTexts.Get("practiceOptions.seedNotWholeNumberFrom"), CommandTexts.Get("practiceOptions.giveNumberMachineLikeSeed"));
        int number = (int)(seed ?? Random.Shared.Next(MostSeeds));
        return new PracticeMachineChoice(new PracticeRequest(number, slope, twist, bend, mark, tolerance), stock ?? new Stock(UsualStock.Washers));
    }

    private static Option<string> Number(string name, string what, double usual, string unit = "MM") =>
        CommonOptions.Number(name, CommandTexts.Say("practiceOptions.default", what, usual), unit);
}

/// <summary>The machine to practise on and the shims at hand.</summary>
internal sealed record PracticeMachineChoice(PracticeRequest Request, Stock Stock);
