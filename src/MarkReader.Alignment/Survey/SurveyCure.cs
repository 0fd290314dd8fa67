using MarkReader.Alignment.Estimates;

namespace MarkReader.Alignment.Survey;

/// <summary>What to do about the fault that matters most.</summary>
public abstract record SurveyCure;

/// <summary>Put shims of this height under this corner of the gantry's frame, and survey again.</summary>
/// <param name="Height">The height, with the uncertainty that the twist's and the response's give it.</param>
public sealed record ShimCorner(BedCorner Corner, MeasuredLength Height) : SurveyCure;

/// <summary>Align a leg again; leg 2 with the gantry at this end of its travel.</summary>
public sealed record RealignLeg(int Leg, GantryEnd Gantry) : SurveyCure;

/// <summary>Shims do not move the mark enough, or not as expected: see how the gantry lies on its rails and whether mirror two rolls with it.</summary>
public sealed record CheckFrame : SurveyCure;
