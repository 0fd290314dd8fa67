using System.Globalization;
using System.Text;
using MarkReader.Application.Machines;
using MarkReader.Application.Reports;
using MarkReader.Application.Storage;
using MarkReader.Application.Studies;
using MarkReader.Application.Tests.Storage;
using MarkReader.Drawing.Documents;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Studies;

/// <summary>Which value a study of pulses offers for a machine, and when it offers none.</summary>
public sealed class ScatterOfferTests : IDisposable
{
    private readonly TemporaryFolder _temporary = new();

    public void Dispose() => _temporary.Dispose();

    /// <summary>By hand: su² = 2·0.01²/2, sv² = 2·0.15²/2; that of the larger axis is 0.15, both together 0.106.</summary>
    [Fact]
    public void Where_the_axes_clearly_differ_the_larger_one_is_offered_everywhere()
    {
        ScatterAnswer answer = Of("u,v\n0.01,0.15\n-0.01,-0.15\n0,0\n");
        Assert.Equal(0.15, answer.ForVisits);
        Assert.Equal(0.15, ScatterReport.From(answer).PulseScatter);
        Assert.Equal("\"pulseScatter\": 0.15", ScatterWords.Line(answer));
        Assert.StartsWith("3 pulses: a mark scatters by 0.150 mm along v", ScatterWords.Result(answer), StringComparison.Ordinal);
        Assert.Contains(ScatterWords.Notes(answer), n => n.Contains("0.150 mm, that of the larger axis", StringComparison.Ordinal));
        Assert.Equal("\"pulseScatter\": 0.15", Banner(answer).Word);
    }

    [Theory]
    [InlineData(1.2)]
    [InlineData(6)]
    public void A_scatter_that_is_hardly_one_stations_is_told_with_its_figures_and_not_offered(double mm)
    {
        ScatterAnswer answer = Of(string.Create(CultureInfo.InvariantCulture, $"u,v\n{mm},0\n{-mm},0\n0,{mm}\n0,{-mm}\n{mm},{mm}\n"));
        Assert.Null(answer.ForVisits);
        Assert.Null(ScatterReport.From(answer).PulseScatter);
        Assert.Null(ScatterWords.Line(answer));
        Assert.Contains("a mark scatters by", ScatterWords.Result(answer), StringComparison.Ordinal);
        Assert.Contains("more than 1 mm hardly come from one station", ScatterWords.Notes(answer).First(), StringComparison.Ordinal);
        Assert.DoesNotContain("pulseScatter", Banner(answer).Word, StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_does_not_take_what_is_not_offered()
    {
        Database database = _temporary.Open();
        (StudyStore studies, MachineStore machines) = (new(database, TimeProvider.System), new(database, TimeProvider.System));
        long id = studies.Begin(StudySetup.OfPulses("press", null, 6).ValueOrThrow()).ValueOrThrow().Entry.Id;
        studies.Put(id, new("u,v\n-3,1\n2,2\n3,-2\n", false), ExpectedVersion.Any).ValueOrThrow();
        KeptMachine machine = machines.Add(MachineFile.Read("""{ "name": "press", "legs": [ { "name": "1", "nearPath": 80, "farPath": 480 } ] }"""u8.ToArray()).ValueOrThrow()).ValueOrThrow();
        Assert.False(new ScatterEntry(studies, machines).Enter(id, machine.Entry.Id, ExpectedVersion.Any).TryGet(out _, out Failure? failure));
        Assert.Equal(StudyInputFailures.NotOffered, failure.Code);
        Assert.Equal(1, machines.Find(machine.Entry.Id).ValueOrThrow().Entry.Version);
    }

    [Fact]
    public void Readings_that_do_not_differ_are_said_to_tell_nothing()
    {
        ScatterAnswer answer = Of("u,v\n0.1,0.7\n0.1,0.7\n0.1,0.7\n");
        Assert.Null(answer.ForVisits);
        Assert.Contains("cannot be told", ScatterWords.Result(answer), StringComparison.Ordinal);
        string[] notes = [.. ScatterWords.Notes(answer)];
        Assert.Contains("do not differ at all", notes[0], StringComparison.Ordinal);
        Assert.DoesNotContain(notes, n => n.Contains("explain", StringComparison.Ordinal));
    }

    /// <summary>Where the photos' uncertainty explains all, the headline says what is offered: the interval's upper end.</summary>
    [Fact]
    public void What_the_photos_hide_is_offered_as_the_upper_end_that_the_headline_tells()
    {
        ScatterAnswer answer = Of("u,v,uncertainty\n0.01,0,0.012\n-0.01,0,0.012\n0,0.01,0.012\n0,-0.01,0.012\n");
        Assert.Equal(0, answer.Scatter.Component.Corrected);
        Assert.Equal(Math.Round(answer.Scatter.Component.CorrectedInterval.High, 3), answer.ForVisits!.Value);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"at most {answer.ForVisits:0.000} mm"), ScatterWords.Result(answer), StringComparison.Ordinal);
        // The same marks with ten times that uncertainty: the interval holds nothing but 0.
        ScatterAnswer hidden = Of("u,v,uncertainty\n0.01,0,0.2\n-0.01,0,0.2\n0,0.01,0.2\n0,-0.01,0.2\n");
        Assert.Null(hidden.ForVisits);
        Assert.Contains("hides", ScatterWords.Notes(hidden).First(), StringComparison.Ordinal);
    }

    [Fact]
    public void Small_numbers_are_written_as_people_write_them()
    {
        // Turned by −0.3° from u, and one mark far from 23 others.
        ScatterAnswer turned = Of("u,v\n-1,0.005\n1,-0.005\n0,0\n");
        Assert.Contains(ScatterDocument.Stability(turned), f => f.Text.Contains(" at 0° from u", StringComparison.Ordinal));
        StringBuilder rows = new("u,v\n9,9\n");
        for (int i = 0; i < 23; i++)
            rows.Append(CultureInfo.InvariantCulture, $"{0.01 * (i % 5)},{0.01 * (i * 3 % 7)}\n");
        Assert.Contains(ScatterWords.Notes(Of(rows.ToString())), n => n.Contains("(p below 0.0001)", StringComparison.Ordinal));
        Assert.Contains(ScatterWords.Notes(Of("u,v\n0.03,0.01\n-0.02,0.04\n0.01,-0.05\n-0.04,-0.01\n0.6,0.5\n0.02,0.03\n-0.01,-0.02\n0.05,0\n")), n => n.Contains("(p ", StringComparison.Ordinal) && !n.Contains('<', StringComparison.Ordinal));
    }

    [Fact]
    public void The_document_has_no_words_to_its_makers() =>
        Assert.DoesNotContain(
            ScatterDocument.Of(Of("u,v\n0.01,0.1\n-0.01,-0.1\n0,0\n"), DateTimeOffset.UnixEpoch).Blocks.OfType<DocumentBlock.Sentences>().SelectMany(s => s.All),
            s => s.Contains("memory", StringComparison.OrdinalIgnoreCase));

    private static DocumentBlock.Banner Banner(ScatterAnswer answer) => ScatterDocument.Of(answer, DateTimeOffset.UnixEpoch).Blocks.OfType<DocumentBlock.Banner>().Single();

    private static ScatterAnswer Of(string table) => RunScatter.Run(ReadingsFile.Pulses(Encoding.UTF8.GetBytes(table)).ValueOrThrow(), null, RunScatter.UsualWidth).ValueOrThrow();
}
