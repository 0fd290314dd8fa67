using System.Reflection;

namespace MarkReader.Architecture.Tests;

/// <summary>The types that an assembly's public face mentions.</summary>
internal static class PublicSignatures
{
    private const BindingFlags Visible = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Every "Type.Member mentions X" of the public types in which X satisfies the condition.</summary>
    public static IReadOnlyList<string> Mentions(IEnumerable<Type> publicTypes, Func<Type, bool> condition) =>
        [.. from type in publicTypes
            from mention in OfType(type).Concat(type.GetMembers(Visible).Where(IsVisible).SelectMany(OfMember))
            from part in Parts(mention.Type)
            where condition(part)
            select $"{type.Name}.{mention.Member} mentions {part.FullName}"];

    private static IEnumerable<(string Member, Type Type)> OfType(Type type) =>
        type.GetInterfaces().Append(type.BaseType).Where(t => t is not null).Select(t => ("(base)", t!));

    private static IEnumerable<(string Member, Type Type)> OfMember(MemberInfo member) =>
        (member switch
        {
            FieldInfo field => [field.FieldType],
            PropertyInfo property => [property.PropertyType],
            MethodInfo method => method.GetParameters().Select(p => p.ParameterType).Append(method.ReturnType),
            ConstructorInfo constructor => constructor.GetParameters().Select(p => p.ParameterType),
            EventInfo happening => [happening.EventHandlerType!],
            _ => Enumerable.Empty<Type>(),
        }).Select(t => (member.Name, t));

    private static bool IsVisible(MemberInfo member) => member switch
    {
        FieldInfo field => field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly,
        MethodBase method => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly,
        PropertyInfo property => property.GetAccessors(nonPublic: true).Any(IsVisible),
        EventInfo happening => IsVisible(happening.AddMethod!),
        _ => false,
    };

    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.HasElementType)
            return Parts(type.GetElementType()!);
        return type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type) : [type];
    }
}
