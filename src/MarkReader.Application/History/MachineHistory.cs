using MarkReader.Application.Machines;

namespace MarkReader.Application.History;

/// <summary>The history of a machine: its visits, what each quantity did, and when the next visit is due.</summary>
/// <param name="Machine">The machine.</param>
/// <param name="Visits">In the order of time; practice is not among them.</param>
/// <param name="Quantities">Those that were measured, in the order of the work.</param>
/// <param name="Reminder">When the next visit is due; null when the machine asks for none or had none yet.</param>
/// <param name="Unread">Visits that this version of the program cannot use.</param>
/// <param name="IsCut">Whether older visits were left out.</param>
public sealed record MachineHistory(
    MachineEntry Machine, IReadOnlyList<HistoryVisit> Visits, IReadOnlyList<QuantityHistory> Quantities, VisitReminder? Reminder, int Unread, bool IsCut);
