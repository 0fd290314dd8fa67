using System.Globalization;
using System.Text.Json.Serialization;
using MarkReader.Alignment.Survey;
using MarkReader.Application.Survey;

namespace MarkReader.Application.Reports;

/// <summary>A significant fault: fields that do not belong to it are left out.</summary>
/// <param name="Fault">legOneSlope, legTwoSlope, twist.</param>
/// <param name="Effect">On the marks over the bed, mm.</param>
/// <param name="Leg">Of a slope: the leg.</param>
/// <param name="Walk">Of a slope: the walk of the mark over the leg's travel, mm.</param>
/// <param name="Slope">Of a slope: mrad.</param>
/// <param name="Corner">Of a twist: the corner that stands out.</param>
/// <param name="Height">Of a twist: how far its mark stands above (positive) or below the plane of the other three, mm.</param>
/// <param name="Uncertainty">Standard uncertainty of the height.</param>
/// <param name="Corners">Of a twist: the probability of each corner that it is the one.</param>
public sealed record SurveyFindingReport(
    string Fault,
    double Effect,
    double Probability,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Leg = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ComponentPair? Walk = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ComponentPair? Slope = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Corner = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Height = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Uncertainty = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, double>? Corners = null)
{
    internal static SurveyFindingReport From(SurveyFinding finding)
    {
        SurveyFindingReport common = new(SurveyReport.Name(finding.Fault), finding.Effect, finding.Probability);
        return finding switch
        {
            SlopeFinding slope => common with
            {
                Leg = slope.Leg.ToString(CultureInfo.InvariantCulture),
                Walk = new(slope.Walk.U, slope.Walk.V),
                Slope = new(slope.Slope.U, slope.Slope.V),
            },
            TwistFinding twist => common with
            {
                Corner = SurveyReport.Name(twist.Corner),
                Height = twist.Height.Value,
                Uncertainty = twist.Height.Uncertainty,
                Corners = BedCorners.All.ToDictionary(SurveyReport.Name, c => twist.CornerWeights[c]),
            },
            _ => common,
        };
    }
}

/// <summary>What to do: fields that do not belong to it are left out.</summary>
/// <param name="Kind">shim, realign, or stop: something is to be checked first.</param>
/// <param name="Reason">The same in sentences.</param>
/// <param name="Corner">Of a shim: under which corner of the gantry's frame.</param>
/// <param name="Height">Of a shim: mm.</param>
/// <param name="Uncertainty">Standard uncertainty of the height.</param>
/// <param name="Stack">Of a shim: the washers that make the height.</param>
/// <param name="Leg">Of a realignment: the leg.</param>
/// <param name="At">Of a realignment of leg 2: the end of its travel at which the gantry stands, near or far.</param>
public sealed record SurveyCureReport(
    string Kind,
    string Reason,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Corner = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Height = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Uncertainty = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] StackReport? Stack = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Leg = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? At = null)
{
    internal static SurveyCureReport? From(SurveyAnswer answer)
    {
        string reason = SurveyWords.Cure(answer.Diagnosis);
        return answer.Diagnosis.Cure switch
        {
            ShimCorner shim => new("shim", reason)
            {
                Corner = SurveyReport.Name(shim.Corner),
                Height = shim.Height.Value.Millimetres,
                Uncertainty = shim.Height.Uncertainty.Millimetres,
                Stack = answer.Stack is { } stack ? StackReport.From(stack) : null,
            },
            RealignLeg realign => new("realign", reason)
            {
                Leg = realign.Leg.ToString(CultureInfo.InvariantCulture),
                At = realign.Leg == 2 ? SurveyReport.Name(realign.Gantry) : null,
            },
            CheckFrame => new("stop", reason),
            _ => null,
        };
    }
}
