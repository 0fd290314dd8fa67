using System.Globalization;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Resources;
using System.Runtime.Loader;

namespace MarkReader.Service.Tests.Support;

/// <summary>A few German texts that are there in tests only, in assemblies as the compiler makes them of PageTexts.de.resx and its like.</summary>
internal static class Translation
{
    private static readonly Dictionary<string, Lazy<Assembly>> s_assemblies = [];

    static Translation()
    {
        Add(
            typeof(Service.Display.Languages).Assembly,
            ("MarkReader.Service.Texts.PageTexts", [("nav.visits", "Besuche"), ("display.language", "Sprache"), ("language.name", "Deutsch"), ("sentence.between", "und bis oder")]));
        Add(
            typeof(Alignment.Advice.HandTurn).Assembly,
            ("MarkReader.Alignment.Texts.AdviserTexts",
            [
                ("leg.firstMark", "Noch keine Marke. Beginnen Sie an der nahen Stelle, wo auch ein schiefer Strahl das Ziel trifft."),
                ("leg.spread", "Über den Weg wandert die Marke um {0:0.00} mm. "),
            ]));
        Add(
            typeof(Drawing.Pictures.PictureWords).Assembly,
            ("MarkReader.Drawing.Texts.DrawingTexts", [("picture.near", "nah")]));
        AssemblyLoadContext.Default.Resolving += (_, asked) =>
            asked.CultureName == German.Name && s_assemblies.TryGetValue(asked.Name!, out Lazy<Assembly>? texts) ? texts.Value : null;
    }

    public static CultureInfo German { get; } = CultureInfo.GetCultureInfo("de");

    private static void Add(Assembly main, (string Name, (string Key, string Text)[] Texts) resource)
    {
        string name = main.GetName().Name + ".resources";
        s_assemblies.Add(name, new(() => AssemblyLoadContext.Default.LoadFromStream(new MemoryStream(Assemble(name, main.GetName().Version!, resource.Name, Resource(resource.Texts))))));
    }

    private static byte[] Resource((string Key, string Text)[] texts)
    {
        using MemoryStream stream = new();
        using (ResourceWriter writer = new(stream))
        {
            foreach ((string key, string text) in texts)
                writer.AddResource(key, text);
        }
        return stream.ToArray();
    }

    // An assembly with a resource and nothing else (ECMA-335, II.22.2 and II.22.24).
    private static byte[] Assemble(string name, Version version, string resource, byte[] bytes)
    {
        MetadataBuilder metadata = new();
        metadata.AddModule(0, metadata.GetOrAddString(name + ".dll"), metadata.GetOrAddGuid(Guid.NewGuid()), default, default);
        metadata.AddAssembly(metadata.GetOrAddString(name), version, metadata.GetOrAddString(German.Name), default, default, default);
        metadata.AddTypeDefinition(default, default, metadata.GetOrAddString("<Module>"), default, MetadataTokens.FieldDefinitionHandle(1), MetadataTokens.MethodDefinitionHandle(1));
        metadata.AddManifestResource(ManifestResourceAttributes.Public, metadata.GetOrAddString($"{resource}.{German.Name}.resources"), default, 0);
        BlobBuilder resources = new();
        resources.WriteInt32(bytes.Length);
        resources.WriteBytes(bytes);
        BlobBuilder image = new();
        new ManagedPEBuilder(new(imageCharacteristics: Characteristics.ExecutableImage | Characteristics.Dll), new(metadata), new(), managedResources: resources).Serialize(image);
        return image.ToArray();
    }
}
