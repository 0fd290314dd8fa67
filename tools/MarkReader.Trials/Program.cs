using System.Globalization;
using MarkReader.Trials.Cameras;
using MarkReader.Trials.Machines;
using MarkReader.Trials.Methods;
using MarkReader.Trials.Scores;

const string Usage = """
    [COUNT] [SEED] [CONDITION…]    bring COUNT machines of each condition into alignment and print the table (default: 1000 machines, all conditions)
    cameras [COUNT] [SEED] [WIDTH]  calibrate random cameras from rendered photos of the board and count true values inside their intervals (default: 200, width 1200 px)
    wide [COUNT] [SEED]            measure wide-lens scenes with a profile of their lens and without (default: 30)
    log CONDITION SEED             print one visit, action by action
    """;

if (args is ["log", var logged, var number])
    return Log(logged, int.Parse(number, CultureInfo.InvariantCulture));
if (args is ["cameras" or "wide", ..])
{
    int[] numbers = [.. args[1..].Select(a => int.Parse(a, CultureInfo.InvariantCulture))];
    if (args[0] == "wide")
        CameraTrial.WideLens(numbers.ElementAtOrDefault(0) is > 0 and var scenes ? scenes : 30, numbers.ElementAtOrDefault(1));
    else
        CameraTrial.Coverage(numbers.ElementAtOrDefault(0) is > 0 and var cameras ? cameras : 200, numbers.ElementAtOrDefault(1), numbers.ElementAtOrDefault(2) is > 0 and var width ? width : 1200);
    return 0;
}

if (args is ["--help", ..])
{
    Console.WriteLine(Usage);
    return 0;
}

int count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1000;
int first = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1;
Condition[] conditions = args.Length > 2 ? [.. args[2..].Select(Find)] : [.. Condition.All];
List<Row> rows = [];
Console.WriteLine(Row.Head);
foreach (Condition condition in conditions)
{
    TrialMachine[] machines = [.. Enumerable.Range(first, count).AsParallel().AsOrdered().Select(seed => TrialMachine.Draw(condition, seed))];
    Add(new(condition.Name, Run(machines, AdvisedVisit.Run)));
    if (condition.Name is not ("plain" or "all"))
        continue;
    Console.WriteLine(new Row(condition.Name + ", two-mark formula", Run(machines, m => new ByHand(m, halving: false).Run())));
    Console.WriteLine(new Row(condition.Name + ", halving by eye", Run(machines, m => new ByHand(m, halving: true).Run())));
}

Console.WriteLine();
foreach (string line in rows.SelectMany(r => r.Rates()))
    Console.WriteLine(line);
foreach (Row row in rows)
{
    foreach ((TrialResult result, int i) in row.Results.Select((r, i) => (r, i)).Where(r => r.r.Unfinished is not null).Take(5))
        Console.WriteLine($"{row.Name}, machine {first + i} not done: {result.Unfinished}");
    foreach ((TrialResult result, int i) in row.Results.Select((r, i) => (r, i)).Where(r => !r.r.After.IsWithin).Take(5))
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{row.Name}, machine {first + i} outside: {result.After.Spread:0.000} mm"));
}

return 0;

void Add(Row row)
{
    rows.Add(row);
    Console.WriteLine(row);
}

static TrialResult[] Run(TrialMachine[] machines, Func<TrialMachine, TrialResult> method) => [.. machines.AsParallel().AsOrdered().Select(method)];

static Condition Find(string name) => Condition.All.FirstOrDefault(c => c.Name == name) ?? throw new ArgumentException($"No condition {name}; there are {string.Join(", ", Condition.All.Select(c => c.Name))}.");

static int Log(string condition, int seed)
{
    TrialMachine trial = TrialMachine.Draw(Find(condition), seed);
    AdvisedVisit.Play(trial, trial.Chance(3), (visit, advice) =>
    {
        if (visit.Events.Count > 0)
            Console.WriteLine($"      {visit.Events[^1]}");
        Console.WriteLine($"{visit.Events.Count + 1,3}: {advice.Action}; true spread {Ending.Of(visit.Machine).Spread:0.00} mm");
        Console.WriteLine($"      {advice.Reason}");
    });
    return 0;
}
