using MarkReader.Application.Apertures;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Apertures;

public sealed class EnergyMarksTextTests
{
    [Theory]
    [InlineData("1:2.1,2:2.9:0.1", "1/2.1/0.05 2/2.9/0.1")]
    [InlineData("1:2.1 2:2.9", "1/2.1/0.05 2/2.9/0.05")]
    [InlineData("1,5:2,1; 2:2,9:0,1", "1.5/2.1/0.05 2/2.9/0.1")]
    [InlineData("", "")]
    public void Energies_and_diameters_are_read_as_people_write_them(string text, string marks) => Assert.Equal(
        marks,
        string.Join(" ", EnergyMarksText.Read(text).ValueOrThrow().Marks.Select(m => FormattableString.Invariant($"{m.Energy}/{m.Diameter.Value.Millimetres}/{m.Diameter.Uncertainty.Millimetres}"))));

    [Theory]
    [InlineData("2.1")]
    [InlineData("1:")]
    [InlineData(":2")]
    [InlineData("1:2:3:4")]
    [InlineData("1:2,1,2:2,9")]
    [InlineData("1:nan")]
    [InlineData("1:wide")]
    public void Anything_else_is_refused(string text)
    {
        Assert.False(EnergyMarksText.Read(text).TryGet(out _, out Failure? failure));
        Assert.Equal("ENERGY_MARKS_UNREADABLE", failure.Code.Name);
    }
}
