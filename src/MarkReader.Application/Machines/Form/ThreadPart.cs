using System.Text.Json.Nodes;
using MarkReader.Alignment.Threads;
using MarkReader.Quantities;

namespace MarkReader.Application.Machines.Form;

/// <summary>The thread of a frame's screws: one of the list, a pitch of its own, or not known.</summary>
internal sealed class ThreadPart(string leg) : FormPart(leg + Thread, leg + Pitch)
{
    public const string Thread = "-thread", Pitch = "-pitch";

    private const string Named = "frame.thread", Own = "frame.pitch";

    private static NumberRule PitchRule => new(MachineTexts.Get("threadPart.pitch"), ScrewThreads.LeastPitch, ScrewThreads.MostPitch, MachineTexts.Get("threadPart.measureHowFarScrewAdvances"));

    public override void Show(JsonObject owner, FormSheet sheet)
    {
        string name = JsonTree.Word(owner, Named);
        double? pitch = JsonTree.Number(owner, Own);
        if (name.Length > 0 && ScrewThreads.Parse(name).TryGet(out ScrewThread? thread, out _))
            (name, pitch) = thread.Series == ThreadSeries.Own ? ("", thread.Pitch.Millimetres) : (thread.Name, (double?)null);
        sheet[leg + Thread] = pitch is null ? name : OfferedPart.OwnValue;
        sheet[leg + Pitch] = pitch is { } own ? PitchRule.Show(own, sheet.Lengths) : "";
    }

    public override void Write(FormSheet sheet, FormSheet shown, JsonObject owner)
    {
        string chosen = sheet[leg + Thread];
        double? pitch = chosen == OfferedPart.OwnValue ? PitchRule.Read(leg + Pitch, sheet, required: true) : null;
        string? name = null;
        if (chosen.Length > 0 && chosen != OfferedPart.OwnValue)
        {
            if (!ScrewThreads.Parse(chosen).TryGet(out ScrewThread? thread, out Failure? failure))
            {
                sheet.Refuse(leg + Thread, failure);
                return;
            }

            name = thread.Name;
        }

        JsonTree.Set(owner, Named, name is null ? null : JsonValue.Create(name));
        JsonTree.Set(owner, Own, pitch is { } own ? JsonValue.Create(own) : null);
    }
}
