using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace PatternShop.Weave.Tests;

/// <summary>What an assembly calls outside itself, read from its metadata.</summary>
internal static class TypeUse
{
    /// <summary>Each type that is referred to, and each of their members, as Namespace.Type and Namespace.Type.Member.</summary>
    public static IReadOnlySet<string> Of(string assemblyFile)
    {
        using var file = File.OpenRead(assemblyFile);
        using var image = new PEReader(file);
        var reader = image.GetMetadataReader();
        var types = reader.TypeReferences.ToDictionary(handle => (EntityHandle)handle, handle => Name(reader, reader.GetTypeReference(handle)));
        var members = from handle in reader.MemberReferences
                      let member = reader.GetMemberReference(handle)
                      where types.ContainsKey(member.Parent)
                      select $"{types[member.Parent]}.{reader.GetString(member.Name)}";
        return types.Values.Concat(members).ToHashSet(StringComparer.Ordinal);
    }

    private static string Name(MetadataReader reader, TypeReference type) =>
        $"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}";
}
