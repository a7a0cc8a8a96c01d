using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>Tells every type that a signature names; the signature's own shape does not matter here.</summary>
/// <param name="seen">Called with each type of ours.</param>
internal sealed class NodeNames(Action<TypeNode> seen) : ISignatureTypeProvider<string, object?>
{
    /// <summary>The outermost type around a defined one; null where it is not ours.</summary>
    public static TypeNode? Of(MetadataReader metadata, TypeDefinitionHandle handle)
    {
        var type = metadata.GetTypeDefinition(handle);
        while (!type.GetDeclaringType().IsNil) type = metadata.GetTypeDefinition(type.GetDeclaringType());
        return TypeNode.Of(metadata.GetString(type.Namespace), metadata.GetString(type.Name));
    }

    /// <summary>A type by its full name.</summary>
    public void Named(string whole)
    {
        var dot = whole.LastIndexOf('.');
        Tell(TypeNode.Of(whole[..dot], whole[(dot + 1)..]));
    }

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind)
    {
        Tell(Of(reader, handle));
        return "";
    }

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind)
    {
        var type = reader.GetTypeReference(handle);
        while (type.ResolutionScope.Kind == HandleKind.TypeReference)
            type = reader.GetTypeReference((TypeReferenceHandle)type.ResolutionScope);
        Tell(TypeNode.Of(reader.GetString(type.Namespace), reader.GetString(type.Name)));
        return "";
    }

    public string GetTypeFromSpecification(
        MetadataReader reader,
        object? genericContext,
        TypeSpecificationHandle handle,
        byte rawTypeKind) => reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    public string GetArrayType(string elementType, ArrayShape shape) => "";

    public string GetByReferenceType(string elementType) => "";

    public string GetFunctionPointerType(MethodSignature<string> signature) => "";

    public string GetGenericInstantiation(string genericType, ImmutableArray<string> typeArguments) => "";

    public string GetGenericMethodParameter(object? genericContext, int index) => "";

    public string GetGenericTypeParameter(object? genericContext, int index) => "";

    public string GetModifiedType(string modifier, string unmodifiedType, bool isRequired) => "";

    public string GetPinnedType(string elementType) => "";

    public string GetPointerType(string elementType) => "";

    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => "";

    public string GetSZArrayType(string elementType) => "";

    private void Tell(TypeNode? node)
    {
        if (node is not null) seen(node);
    }
}
