using MarkReader.Alignment.Visits;
using MarkReader.Application.Advising;
using MarkReader.Application.Pictures;
using MarkReader.Application.Practising;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Application.VisitLog;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Visits;

/// <summary>A visit as its page shows it.</summary>
public sealed record VisitView(KeptVisit Kept)
{
    /// <summary>Events that the list shows before the earlier ones are unfolded.</summary>
    public const int EventsShown = 4;

    public long Id => Kept.Entry.Id;

    /// <summary>Null when this version of the program cannot use the visit; <see cref="Refusal"/> then says why.</summary>
    public VisitAdvice? Advice { get; private init; }

    public Failure? Refusal { get; private init; }

    public ActionView? Action { get; private init; }

    public IReadOnlyList<StepChip> Steps { get; private init; } = [];

    /// <summary>The events that count, in their order.</summary>
    public IReadOnlyList<EventLine> Events { get; private init; } = [];

    /// <summary>The events that were taken back.</summary>
    public IReadOnlyList<EventLine> TakenBack { get; private init; } = [];

    /// <summary>Whether this visit has had a pulse before: then the cautions are known, and folded up.</summary>
    public bool HasFired => Events.Any(e => e.Kept.Text.Contains("\"mark\"", StringComparison.Ordinal) || e.Kept.Text.Contains("\"survey\"", StringComparison.Ordinal));

    /// <summary>The pictures as it stands now, those of the step at hand first.</summary>
    public IReadOnlyList<PictureView> Pictures { get; private init; } = [];

    /// <summary>The latest photo of the target at hand with what is known drawn over it; null when there is none.</summary>
    public LegPhotoView? Photo { get; private init; }

    /// <summary>The step at hand by its name, and what to say of it, when it had been left behind and is open again.</summary>
    public (string Step, string Text)? Reopened => Advice?.State is { IsReopened: true, Current: { } step } state
        ? state.Stale.Contains(step) ? (step.Name(), "reopened.stale") : (step.Name(), "reopened")
        : null;

    /// <summary>Of a practice machine at its end, mm.</summary>
    public double? TrueSpread { get; private init; }

    /// <summary>What a photo's measurement warns of; that a practice machine's photo names no camera is no fault of it.</summary>
    public IEnumerable<WarningReport> WarningsOf(MeasureReport measurement) => measurement.Warnings.Where(w => !(Kept.Entry.IsPractice && w.Code == PhotoWarningCodes.CameraUnnamed));

    internal static VisitView Of(KeptVisit kept, PhotoStore photos, IStringLocalizer<VisitTexts> texts, Figures figures)
    {
        VisitView view = new(kept);
        if (!AdviseVisit.At(kept, kept.Entry.Version).TryGet(out VisitAdvice? advice, out Failure? failure) || !AdviseVisit.Read(kept).TryGet(out Visit? visit, out failure)
            || !VisitGallery.Of(kept, PictureLook.Of(figures)).TryGet(out VisitGallery? gallery, out failure))
            return view with { Refusal = failure };
        KeptEvent[] back = [.. kept.All.Where(e => e.TakenBack is not null)];
        IReadOnlyList<VisitEvent> backRead = AdviseVisit.Read(kept, back).TryGet(out Visit? taken, out _) ? taken.Events : [];
        return view with
        {
            TakenBack = [.. back.Zip(backRead, (e, read) => EventLine.Of(e, read, texts, figures))],
            Advice = advice,
            Action = ActionView.Of(advice.Action, visit.Setup, texts, figures),
            Steps = StepChip.All(visit.Setup, advice.State),
            Events = [.. kept.Events.Zip(visit.Events, (e, read) => EventLine.Of(e, read, texts, figures))],
            Pictures = PictureView.All(kept, advice, gallery),
            Photo = LegPhotoView.Of(kept, visit, advice, photos, gallery),
            TrueSpread = advice.Action is VisitAction.Done ? PracticePulses.TrueSpread(kept)?.Millimetres : null,
        };
    }
}
