using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;

namespace PatternShop.Weave.Tests;

/// <summary>Says what could change in a value after it was made, or would make two equal values differ.</summary>
internal static class ImmutabilityGuard
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly HashSet<Type> Passive =
    [
        typeof(IEnumerable<>), typeof(IEnumerator<>), typeof(IEqualityComparer<>), typeof(IComparer<>), typeof(KeyValuePair<,>),
    ];

    private static readonly HashSet<Type> Changeable =
        [typeof(Span<>), typeof(Memory<>), typeof(ArraySegment<>), typeof(StringBuilder), typeof(Array)];

    private static readonly string[] ChangeableSpaces =
        ["System.Collections", "System.Collections.Generic", "System.Collections.ObjectModel", "System.Collections.Concurrent", "System.Text.Json.Nodes", "System.IO"];

    private static readonly HashSet<Type> Values =
    [
        typeof(string), typeof(decimal), typeof(Guid), typeof(DateOnly), typeof(DateTimeOffset), typeof(TimeSpan), typeof(Rune),
        typeof(Int128), typeof(UInt128), typeof(System.Numerics.BigInteger),
    ];

    /// <summary>The exported types of an assembly and whatever types of the same assembly stand in their fields.</summary>
    public static IReadOnlyList<Type> TypesToGuard(Assembly assembly)
    {
        var found = new HashSet<Type>();
        var open = new Stack<Type>(assembly.GetExportedTypes());
        while (open.TryPop(out var type))
        {
            if (type.Assembly == assembly && !type.IsEnum && found.Add(type))
            {
                Array.ForEach(type.GetFields(Declared), field => Parts(field.FieldType).ToList().ForEach(open.Push));
            }
        }

        return [.. found];
    }

    public static IReadOnlyList<string> Faults(Type type)
    {
        if (type.IsEnum || typeof(Delegate).IsAssignableFrom(type))
        {
            return [];
        }

        return
        [
            .. FieldFaults(type),
            .. type.GetProperties(Declared).Where(IsSettable).Select(property => $"{type.Name}.{property.Name} can be set"),
            .. Exposed(type).Where(member => CanChange(member.Type)).Select(member => $"{type.Name}.{member.Name} gives out {member.Type.Name}"),
            .. IsRecord(type) ? RecordFaults(type) : [],
        ];
    }

    private static IEnumerable<string> FieldFaults(Type type) =>
        from field in type.GetFields(Declared)
        where !field.IsInitOnly && !field.IsLiteral
        select $"{type.Name}.{field.Name} can be assigned";

    private static bool IsSettable(PropertyInfo property) =>
        property.SetMethod is { } setter && !setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static IEnumerable<(string Name, Type Type)> Exposed(Type type)
    {
        var fields = type.GetFields(Declared).Where(field => field.IsPublic || field.IsFamily).Select(field => (field.Name, field.FieldType));
        var methods = type.GetMethods(Declared).Where(method => method.IsPublic || method.IsFamily);
        var outs = from method in methods
                   from parameter in method.GetParameters()
                   where parameter.IsOut
                   select (method.Name, parameter.ParameterType);
        return [.. fields, .. methods.Where(method => !MakesArray(type, method)).Select(method => (method.Name, method.ReturnType)), .. outs];
    }

    // an array that a static class makes is the caller's own, if the class has none to give away
    private static bool MakesArray(Type type, MethodInfo method) =>
        type is { IsAbstract: true, IsSealed: true }
        && !method.IsSpecialName
        && method.ReturnType.IsArray
        && method.ReturnType.GetElementType()!.IsPrimitive
        && !type.GetFields(Declared).Any(field => CanChange(field.FieldType));

    private static bool CanChange(Type type)
    {
        if (type.IsArray || type.IsPointer)
        {
            return true;
        }

        if (type.IsByRef)
        {
            return CanChange(type.GetElementType()!);
        }

        var shape = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        return Changeable.Contains(shape)
            || (ChangeableSpaces.Contains(shape.Namespace) && !Passive.Contains(shape) && !shape.IsEnum)
            || type.GenericTypeArguments.Any(CanChange);
    }

    private static bool IsRecord(Type type) =>
        type.GetMethod("PrintMembers", Declared, [typeof(StringBuilder)]) is not null;

    private static IEnumerable<string> RecordFaults(Type type)
    {
        if (type is { IsClass: true, IsSealed: false, IsAbstract: false })
        {
            yield return $"{type.Name} is neither sealed nor abstract";
        }

        foreach (var field in type.GetFields(Declared).Where(field => !field.IsStatic && !ComparesByValue(field.FieldType)))
        {
            yield return $"{type.Name}.{field.Name} compares by reference ({field.FieldType.Name})";
        }
    }

    private static bool ComparesByValue(Type type)
    {
        if (type.IsPrimitive || type.IsEnum || type.IsGenericParameter || Values.Contains(type))
        {
            return true;
        }

        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return ComparesByValue(inner);
        }

        // an immutable array is equal to itself only
        var isArray = type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>);
        return !isArray && typeof(IEquatable<>).MakeGenericType(type).IsAssignableFrom(type) && type.GenericTypeArguments.All(ComparesByValue);
    }

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType
            ? Parts(type.GetElementType()!)
            : [type.IsGenericType ? type.GetGenericTypeDefinition() : type, .. type.GenericTypeArguments.SelectMany(Parts)];
}
