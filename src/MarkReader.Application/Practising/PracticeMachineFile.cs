using MarkReader.Application.Shims;
using MarkReader.Practice.Machines;
using MarkReader.Practice.Misalignment;
using MarkReader.Quantities;

namespace MarkReader.Application.Practising;

/// <summary>A practice machine as the machine's document that a visit to it begins with.</summary>
internal static class PracticeMachineFile
{
    public static Outcome<PracticeMachine> Draw(PracticeRequest request) => request.Ranges().TryGet(out MisalignmentRanges? ranges, out Failure? failure)
        ? RandomMachines.Draw(StatedMachine.Desktop, ranges, new Random(request.Seed))
        : failure;

    public static Outcome<string> Write(PracticeRequest request)
    {
        if (!Draw(request).TryGet(out PracticeMachine? machine, out Failure? failure))
            return failure;
        Length tolerance = Length.FromMillimetres(request.Tolerance);
        return PracticeVisitFile.WriteMachine(
            PracticeSetup.Of(machine.Stated, tolerance, tolerance, stock: UsualStock.Washers),
            machine.Stated,
            request);
    }
}
