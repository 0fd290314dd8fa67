namespace MarkReader.Metrology.Studies;

/// <summary>One reading of one quantity of one part by one operator.</summary>
/// <param name="Part">What was measured; here a mark.</param>
/// <param name="Operator">Who or what measured it: a person, a phone.</param>
/// <param name="Repeat">Which time; a photo, where all parts are read in one photo.</param>
/// <param name="Value">In one unit for the whole study.</param>
public sealed record Reading(string Part, string Operator, string Repeat, double Value);
