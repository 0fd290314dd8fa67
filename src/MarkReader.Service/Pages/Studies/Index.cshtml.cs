using System.Text;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Metrology.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages.Studies;

/// <summary>The studies that are kept, what each kind needs, and the forms that begin one.</summary>
/// <remarks>Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class StudiesModel(StudyStore studies, Figures figures, IStringLocalizer<StudyPageTexts> texts) : PageModel
{
    // Marks of a target, as many as the command line's plan reckons with.
    private const int UsualMarks = 5;

    private const int OnPage = 20;

    public IReadOnlyList<StudyEntry> Kept { get; private set; } = [];

    /// <summary>Where the next page starts; null when this is the last.</summary>
    public string? Next { get; private set; }

    /// <summary>A key for the forms that begin a study.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    public StudyPlan Plan { get; } = StudyPlan.For(StudyRequest.UsualWidth, UsualMarks, ExpectedShares.Usual).ValueOrThrow();

    public PulsePlan Pulse { get; } = PulsePlan.For(RunScatter.UsualWidth).ValueOrThrow();

    public StudyFields Marks { get; private set; } = null!;

    public StudyFields Pulses { get; private set; } = null!;

    /// <summary>What the fields begin with, and how well that would know the gauge.</summary>
    public string UsualWords
    {
        get
        {
            int people = texts["field.people.usual"].Value.Split('\n').Length;
            (double low, double high) = Ends(StudyPlan.Of(new(UsualMarks, people, StudyFields.UsualPhotos), ExpectedShares.Usual).Factors);
            return texts["plan.usual.marks", people, StudyFields.UsualPhotos, figures.Number(low, 2), figures.Number(high, 2)];
        }
    }

    /// <summary>The same of pulses.</summary>
    public string UsualPulsesWords
    {
        get
        {
            (double low, double high) = Ends(PulsePlan.FactorsOf(StudyFields.UsualPulses));
            return texts["plan.usual.pulses", StudyFields.UsualPulses, figures.Number(low, 2), figures.Number(high, 2)];
        }
    }

    /// <summary>What is wrong with the list.</summary>
    public Failure? Failure { get; private set; }

    public void OnGet(long? before) => Show(before);

    /// <summary>Begins a study; a form that is sent twice begins one.</summary>
    public IActionResult OnPostBegin(string? kind, string? key)
    {
        StudyFields fields = StudyFields.Of(kind == StudySetupText.Name(StudyKind.Pulses) ? StudyKind.Pulses : StudyKind.Marks, Request.Form);
        if (fields.Read().TryGet(out StudySetup? setup, out Failure? failure)
            && KeyOf(key ?? Key, fields).TryGet(out RequestKey? request, out failure)
            && studies.Begin(setup, request).TryGet(out KeptStudy? begun, out failure))
            return Redirect(FormattableString.Invariant($"/studies/{begun.Entry.Id}"));
        Show(null);
        fields = fields.Refused(failure);
        (Marks, Pulses) = fields.Kind == StudyKind.Marks ? (fields, Pulses) : (Marks, fields);
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        return Page();
    }

    // With what was typed in it: a page that is gone back to and sent with other fields begins another study.
    private static Outcome<RequestKey> KeyOf(string key, StudyFields fields)
    {
        byte[] typed = Encoding.UTF8.GetBytes(string.Join('\u0001', fields.Part, fields.Name, fields.Length, fields.People, fields.Count, string.Join('\u0001', CardFields.Names.Select(fields.Card.GetValueOrDefault))));
        return RequestKey.Of(key, typed).TryGet(out RequestKey? plain, out Failure? failure) ? RequestKey.Of($"{key}-{plain.Digest[..16]}", typed) : failure;
    }

    private static (double Low, double High) Ends(Metrology.MonteCarlo.Interval factors) => (factors.Low, factors.High);

    private void Show(long? before)
    {
        Marks = StudyFields.Blank(StudyKind.Marks, texts["field.people.usual"], figures);
        Pulses = StudyFields.Blank(StudyKind.Pulses, "", figures);
        if (studies.List(before, OnPage).TryGet(out Page<StudyEntry>? page, out Failure? failure))
            (Kept, Next) = (page.Items, page.Next);
        else
            Failure = failure;
    }
}
