using System.Reflection;
using System.Text;

namespace MarkReader.Architecture.Tests;

public sealed class PublicSignaturesTests
{
    [Fact]
    public void No_picture_of_OpenCV_leaves_imaging()
    {
        Type[] types = Assembly.Load("MarkReader.Imaging").GetExportedTypes();

        Assert.NotEmpty(types);
        Assert.Empty(PublicSignatures.Mentions(types, t => t.Namespace?.StartsWith("OpenCvSharp", StringComparison.Ordinal) == true));
    }

    [Fact]
    public void No_canvas_of_Skia_leaves_drawing()
    {
        Type[] types = Assembly.Load("MarkReader.Drawing").GetExportedTypes();

        Assert.NotEmpty(types);
        Assert.Empty(PublicSignatures.Mentions(types, t => t.Namespace?.StartsWith("SkiaSharp", StringComparison.Ordinal) == true));
    }

    [Fact]
    public void The_search_finds_a_type_wherever_it_can_stand_in_a_signature()
    {
        IReadOnlyList<string> found = PublicSignatures.Mentions([typeof(Sample)], t => t == typeof(StringBuilder));

        Assert.Equal(6, found.Count);
        Assert.All(["Field", "Property", "get_Property", "Method", ".ctor", "(base)"], member => Assert.Contains(found, f => f.Contains("." + member + " ", StringComparison.Ordinal)));
    }

    /// <summary>Mentions a text builder six times where others see it, and once where they do not.</summary>
    public sealed class Sample(StringBuilder[] builders) : IEquatable<StringBuilder>
    {
        private readonly StringBuilder[] _hidden = builders;

        public static readonly IReadOnlyList<StringBuilder>? Field;

        public Dictionary<string, StringBuilder[]> Property { get; } = [];

        public int Method(ref StringBuilder builder) => builder.Length + _hidden.Length;

        bool IEquatable<StringBuilder>.Equals(StringBuilder? other) => false;

        public override bool Equals(object? obj) => false;

        public override int GetHashCode() => 0;
    }
}
