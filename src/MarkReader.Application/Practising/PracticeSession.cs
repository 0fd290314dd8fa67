using MarkReader.Alignment.Shims;
using MarkReader.Alignment.Visits;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Truth;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>Somebody's visit to a practice machine: steps are done, and can be undone.</summary>
/// <remarks>Not for several threads at a time.</remarks>
public sealed class PracticeSession
{
    private readonly Stack<PracticeStep> _steps = [];
    private readonly PracticeVisit _first;
    private readonly Random _random;
    private readonly IPracticeMeasurement _measurement;

    private PracticeSession(PracticeRequest request, PracticeMachine machine, VisitSetup setup, IPracticeMeasurement measurement) =>
        (Request, _first, Setup, _random, _measurement) = (request, PracticeVisit.Begin(machine), setup, new Random(unchecked(request.Seed + 1_000_003)), measurement);

    /// <summary>The machine that was asked for.</summary>
    public PracticeRequest Request { get; }

    /// <summary>What the machine's owner tells of it.</summary>
    public VisitSetup Setup { get; }

    public StatedMachine Machine => _first.Machine.Stated;

    /// <summary>What was done, in order.</summary>
    public IReadOnlyList<PracticeStep> Steps => [.. _steps.Reverse()];

    public IReadOnlyList<VisitEvent> Events => Now.Events;

    private PracticeVisit Now => _steps.TryPeek(out PracticeStep? last) ? last.After : _first;

    /// <param name="stock">Washers and sheets for shims.</param>
    /// <param name="measurement">How the marks are measured.</param>
    public static Outcome<PracticeSession> Begin(PracticeRequest request, IReadOnlyList<StockItem> stock, IPracticeMeasurement measurement)
    {
        if (!PracticeMachineFile.Draw(request).TryGet(out PracticeMachine? machine, out Failure? failure))
            return failure;
        Length tolerance = Length.FromMillimetres(request.Tolerance);
        return new PracticeSession(request, machine, PracticeSetup.Of(machine.Stated, tolerance, tolerance, stock: stock), measurement);
    }

    public Outcome<VisitAdvice> Advise() => VisitAdviser.Advise(Setup, Events);

    /// <summary>Does what the action says; when the beam is lost or the machine refuses, nothing has happened.</summary>
    public Outcome<PracticeStep> Do(VisitAction action)
    {
        MeasuredMark? measured = null;
        Outcome<MeasuredPoint> Measure(BurnMark mark)
        {
            if (!_measurement.Measure(mark, PulseNumber, _random).TryGet(out measured, out Failure? wrong))
                return wrong;
            return measured.Mark;
        }

        if (!Now.Do(action, _random, Measure).TryGet(out PracticeVisit? after, out Failure? failure))
            return failure;
        PracticeStep step = new(action, measured, after);
        _steps.Push(step);
        return step;
    }

    /// <summary>Takes back the last step; false when there is none.</summary>
    public bool Undo() => _steps.TryPop(out _);

    /// <summary>The true spread of the marks over the bed; null when the beam is lost somewhere. For the end of a practice, never for the adviser.</summary>
    public Length? TrueSpread(bool before = false) => (before ? _first : Now).Machine.BedSpread().TryGet(out MarkSpread? spread, out _) ? spread.Greatest : null;

    private int PulseNumber => 1 + _steps.Count(s => s.Mark is not null);
}

/// <summary>One thing that was done on a practice machine.</summary>
/// <param name="Mark">The mark, of a pulse.</param>
/// <param name="After">The visit after it.</param>
public sealed record PracticeStep(VisitAction Action, MeasuredMark? Mark, PracticeVisit After);

/// <summary>A mark as it was measured.</summary>
/// <param name="Mark">Its place, with the uncertainty of the measurement and the scatter of the pulse.</param>
/// <param name="Photo">The photo that it was measured in; null without one.</param>
public sealed record MeasuredMark(MeasuredPoint Mark, string? Photo = null);

/// <summary>How the marks of a practice machine are measured.</summary>
public interface IPracticeMeasurement
{
    /// <param name="number">Number of the pulse, from 1.</param>
    Outcome<MeasuredMark> Measure(BurnMark mark, int number, Random random);
}

/// <summary>The machine says where its marks are; no photo is taken.</summary>
public sealed class StatedMarks : IPracticeMeasurement
{
    public Outcome<MeasuredMark> Measure(BurnMark mark, int number, Random random) => new MeasuredMark(mark.Measured);
}
