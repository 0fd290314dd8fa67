using System.Text;
using MarkReader.Alignment.Visits;
using MarkReader.Application.Machines;

namespace MarkReader.Application.Tests.Machines;

public sealed class MachinePresetsTests
{
    [Fact]
    public void There_is_one_for_each_size_and_each_is_a_whole_machine()
    {
        Assert.Equal(["small desktop", "medium bench", "large bed"], MachinePresets.All.Select(p => p.Name));
        Assert.All(MachinePresets.All, preset =>
        {
            MachineDocument document = MachineFile.Read(Encoding.UTF8.GetBytes(preset.Text)).ValueOrThrow();
            Assert.Empty(document.Warnings);
            Assert.Equal(preset.Name, document.Name);
            Assert.Equal("common practice, no source", preset.Source);
            VisitSetup setup = document.Setup;
            Assert.NotEmpty(setup.Stock);
            Assert.NotNull(setup.Aperture);
            // Leg 1 grows by the gantry's travel, leg 2 by the head's.
            Assert.Equal((setup.Bed!.Travels.Y.Millimetres, setup.Bed.Travels.X.Millimetres), (Travel(setup.Legs[0]), Travel(setup.Legs[1])));
        });
    }

    private static double Travel(VisitLeg leg) => leg.Setup.Far.Path.Millimetres - leg.Setup.Near.Path.Millimetres;
}
