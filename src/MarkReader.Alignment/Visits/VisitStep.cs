namespace MarkReader.Alignment.Visits;

/// <summary>A step of the job, in the order of the work.</summary>
public enum VisitStep
{
    /// <summary>Mirror one to mirror two's frame.</summary>
    LegOne,

    /// <summary>Mirror two to the head's entry hole.</summary>
    LegTwo,

    /// <summary>The corner survey with its cures.</summary>
    Survey,

    /// <summary>The steady mark in the entry hole.</summary>
    Centring,

    /// <summary>Mirror three to the bed.</summary>
    LegThree,
}

/// <summary>The steps by their names in files: 1, 2, survey, centring, 3.</summary>
public static class VisitSteps
{
    private static readonly (VisitStep Step, string Name)[] s_names =
        [(VisitStep.LegOne, VisitLeg.One), (VisitStep.LegTwo, VisitLeg.Two), (VisitStep.Survey, "survey"), (VisitStep.Centring, "centring"), (VisitStep.LegThree, VisitLeg.Three)];

    public static string Name(this VisitStep step) => s_names.First(n => n.Step == step).Name;

    /// <summary>The step with this name; null when there is none.</summary>
    public static VisitStep? Find(string name) => s_names.Where(n => n.Name == name).Select(n => (VisitStep?)n.Step).FirstOrDefault();

    /// <summary>The steps that a machine asks for, in the order of the work.</summary>
    public static IReadOnlyList<VisitStep> Of(VisitSetup setup) => [.. s_names.Select(n => n.Step).Where(step => step switch
    {
        VisitStep.Survey => setup.Bed is not null,
        VisitStep.Centring => setup.Aperture is not null,
        _ => setup.Find(step.Name()) is not null,
    })];

    internal static VisitStep OfLeg(string leg) => Find(leg)!.Value;
}
