using MarkReader.Alignment.Visits;
using MarkReader.Application.Inputs;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Pages.Visits;

/// <summary>Work as it was really done: as asked for, save for what was typed.</summary>
internal static class WorkDone
{
    public static Outcome<VisitAction> Read(VisitAction asked, Figures figures, string? turns, string? height, string? right, string? up)
    {
        switch (asked)
        {
            case VisitAction.Turn turn when !string.IsNullOrWhiteSpace(turns):
                return TurnsText.Read(turns) is { } typed
                    ? turn with { Turns = typed }
                    : new Failure(ServiceFailures.FieldInvalid, ServiceTexts.Get("workDone.turnCannotBeRead"), ServiceTexts.Word("workDone.writeLikeOrCcw", figures.Sign("0.25")));
            case VisitAction.Shim shim when !string.IsNullOrWhiteSpace(height):
                return figures.ReadMillimetres(height).TryGet(out TypedLength? typedHeight, out Failure? failure) ? shim with { Height = Length.FromMillimetres(typedHeight.Millimetres) } : failure;
            case VisitAction.RaiseTube raise when !string.IsNullOrWhiteSpace(height):
                return figures.ReadMillimetres(height).TryGet(out TypedLength? rise, out failure) ? raise with { Height = Length.FromMillimetres(rise.Millimetres) } : failure;
            case VisitAction.MoveTarget when !string.IsNullOrWhiteSpace(right) || !string.IsNullOrWhiteSpace(up):
                return figures.ReadMillimetres(string.IsNullOrWhiteSpace(right) ? "0" : right).TryGet(out TypedLength? u, out failure)
                    && figures.ReadMillimetres(string.IsNullOrWhiteSpace(up) ? "0" : up).TryGet(out TypedLength? v, out failure)
                    ? new VisitAction.MoveTarget(new(u.Millimetres, v.Millimetres))
                    : failure;
            case VisitAction.Fire or VisitAction.Survey or VisitAction.Done or VisitAction.Stop:
                return new Failure(ServiceFailures.FieldInvalid, ServiceTexts.Get("workDone.noWorkOnMachineAsked"), ServiceTexts.Get("workDone.lookAtWhatVisitAsks"));
            default:
                return asked;
        }
    }
}
