using System.Reflection;

namespace MarkReader.Architecture.Tests;

public sealed class DirectionsTests
{
    public static TheoryData<string> Names => [.. Directions.Projects];

    [Fact]
    public void Every_project_of_the_source_folder_has_its_place() =>
        Assert.Equal(Directions.Projects.Order(StringComparer.Ordinal), ProjectFile.In("src").Select(p => p.Name).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_project_file_asks_only_for_what_lies_below(string name)
    {
        ProjectFile project = ProjectFile.In("src").Single(p => p.Name == name);

        Assert.DoesNotContain(project.Projects, used => !Directions.Allows(name, used));
        Assert.DoesNotContain(project.Packages, library => !Directions.AllowsLibrary(name, library));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_compiled_project_uses_only_what_lies_below(string name)
    {
        // The compiled references show what came in through another project's reference, too.
        string[] used = [.. Assembly.Load("MarkReader." + name).GetReferencedAssemblies().Select(a => a.Name!)];

        Assert.NotEmpty(used);
        Assert.DoesNotContain(used, u => u.StartsWith("MarkReader.", StringComparison.Ordinal) && !Directions.Allows(name, ProjectFile.ShortName(u)));
        Assert.DoesNotContain(used, u => !Directions.AllowsLibrary(name, u));
    }

    [Fact]
    public void Quantities_and_cards_need_no_package() =>
        Assert.All(ProjectFile.In("src").Where(p => p.Name is "Quantities" or "Cards"), p => Assert.Empty(p.Packages));

    [Theory]
    [InlineData("Imaging", "Alignment")]
    [InlineData("Alignment", "Imaging")]
    [InlineData("Alignment", "Cards")]
    [InlineData("Alignment", "Practice")]
    [InlineData("Practice", "Alignment")]
    [InlineData("Practice", "Cards")]
    [InlineData("Imaging", "Rendering")]
    [InlineData("Rendering", "Imaging")]
    [InlineData("Rendering", "Drawing")]
    [InlineData("Application", "Service")]
    [InlineData("Quantities", "Quantities")]
    public void The_directions_forbid(string user, string used) => Assert.False(Directions.Allows(user, used));

    [Theory]
    [InlineData("Application", "OpenCvSharp")]
    [InlineData("Service", "SkiaSharp")]
    [InlineData("Imaging", "SixLabors.ImageSharp")]
    [InlineData("Rendering", "SixLabors.ImageSharp")]
    [InlineData("Rendering", "BitMiracle.LibJpeg.NET")]
    [InlineData("Rendering", "SkiaSharp")]
    public void A_library_stays_where_it_belongs(string project, string library) => Assert.False(Directions.AllowsLibrary(project, library));
}
