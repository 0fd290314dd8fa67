using MarkReader.Application.Studies;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Pages.Studies;

namespace MarkReader.Service.Tests.Display;

/// <summary>The fields of a study's plan in the reader's unit.</summary>
public sealed class StudyFieldsTests
{
    private static readonly Figures s_inch = new(new Preferences(true, false));

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.123)]
    public void A_plan_saved_untouched_in_inches_keeps_its_tolerance_to_the_last_digit(double millimetres)
    {
        StudySetup setup = StudySetup.OfMarks("wall", Length.FromMillimetres(millimetres), ["anna", "ben"], 3).ValueOrThrow();
        Assert.Equal(setup.Tolerance, StudyFields.Of(setup, s_inch).Read(setup).ValueOrThrow().Tolerance);
    }

    [Fact]
    public void The_usual_tolerance_is_taken_as_it_is_when_it_is_left_standing_in_inches() =>
        Assert.Equal(StudyRequest.UsualTolerance, (StudyFields.Blank(StudyKind.Marks, "anna\nben", s_inch) with { Name = "wall" }).Read().ValueOrThrow().Tolerance);

    [Fact]
    public void A_changed_tolerance_is_read_in_inches()
    {
        StudySetup setup = StudySetup.OfMarks("wall", Length.FromMillimetres(0.5), ["anna", "ben"], 3).ValueOrThrow();
        Assert.Equal(0.254, (StudyFields.Of(setup, s_inch) with { Length = "0.01" }).Read(setup).ValueOrThrow().Tolerance!.Value.Millimetres, 12);
    }
}
