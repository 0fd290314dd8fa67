using MarkReader.Quantities;

namespace MarkReader.Alignment.Survey;

/// <summary>A mark at the head, and where the head stood.</summary>
/// <param name="X">The head's travel from its near end.</param>
/// <param name="Y">The gantry's travel from its near end.</param>
/// <param name="Mark">The mark in the card frame of the head's target: u right, v up as one looks at the tape.</param>
public sealed record SurveyMark(Length X, Length Y, MeasuredPoint Mark);
