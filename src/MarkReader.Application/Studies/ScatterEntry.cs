using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Machines;
using MarkReader.Application.Machines.Form;
using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Studies;

/// <summary>Enters the scatter of pulses that a study found in a machine's document, as its pulseScatter. Visits that are begun later reckon with it.</summary>
public sealed class ScatterEntry(StudyStore studies, MachineStore machines)
{
    private const string Field = "pulseScatter";

    /// <summary>The machine with the study's value, when its version is the expected one.</summary>
    public Outcome<KeptMachine> Enter(long study, long machine, ExpectedVersion expected)
    {
        if (!studies.Find(study).TryGet(out KeptStudy? kept, out Failure? failure))
            return failure;
        StudyStanding standing = StudyStanding.Of(kept);
        if (standing.Scatter is not { } answer)
            return standing.NotYet ?? new(StudyInputFailures.Conflict, KeptStudyTexts.Get("machine.notPulses"), KeptStudyTexts.Get("machine.notPulsesHint"));
        if (answer.ForVisits is not { } value)
            return answer.NotOffered!;
        if (!machines.Find(machine).TryGet(out KeptMachine? found, out failure))
            return failure;
        if (!expected.Admits(found.Entry.Version))
            return StorageFailures.ChangedMeanwhile(KeptStudyTexts.Say("machine.changed", found.Entry.Name), found.Entry.Version);
        System.Text.Json.Nodes.JsonObject tree = JsonTree.Parse(found.Text);
        JsonTree.Set(tree, Field, value);
        return MachineFile.Read(Encoding.UTF8.GetBytes(JsonTree.Text(tree))).TryGet(out MachineDocument? document, out failure)
            ? machines.Replace(machine, document, ExpectedVersion.OneOf(found.Entry.Version))
            : failure;
    }

    /// <summary>What a machine's visits reckon with now; null when this version cannot read its document.</summary>
    public static Length? Now(KeptMachine machine) =>
        MachineFile.Read(Encoding.UTF8.GetBytes(machine.Text)).TryGet(out MachineDocument? document, out _) ? document.Setup.PulseScatter : null;

    /// <summary>What visits reckon with when a machine says nothing.</summary>
    public static Length Usual => VisitSetup.UsualPulseScatter;
}
