using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text;
using System.Text.RegularExpressions;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>
/// Which type of an assembly uses which of ours: by base type, interface, constraint, attribute, field, signature, local variable and every
/// instruction of its methods. What a compiler writes out as a value (constants, <c>nameof</c>) leaves no trace and is not seen.
/// </summary>
public sealed partial class CompiledTypes
{
    private readonly MetadataReader _metadata;
    private readonly PEReader _file;
    private readonly NodeNames _names;
    private readonly HashSet<TypeUse> _uses = [];
    private TypeNode? _from;

    private CompiledTypes(PEReader file)
    {
        _file = file;
        _metadata = file.GetMetadataReader();
        _names = new NodeNames(node => { if (_from is { } from && from != node) _uses.Add(new TypeUse(from, node)); });
    }

    /// <summary>The uses in the assembly of this path.</summary>
    public static IReadOnlyCollection<TypeUse> UsesIn(string path)
    {
        using var file = new PEReader(File.OpenRead(path));
        var types = new CompiledTypes(file);
        foreach (var handle in types._metadata.TypeDefinitions) types.Read(handle);
        return types._uses;
    }

    private void Read(TypeDefinitionHandle handle)
    {
        _from = NodeNames.Of(_metadata, handle);
        if (_from is null) return;
        var type = _metadata.GetTypeDefinition(handle);
        Use(type.BaseType);
        foreach (var implemented in type.GetInterfaceImplementations()) Use(_metadata.GetInterfaceImplementation(implemented).Interface);
        Read(type.GetGenericParameters());
        Read(type.GetCustomAttributes());
        foreach (var field in type.GetFields().Select(_metadata.GetFieldDefinition))
        {
            field.DecodeSignature(_names, null);
            Read(field.GetCustomAttributes());
        }

        foreach (var property in type.GetProperties().Select(_metadata.GetPropertyDefinition)) Read(property.GetCustomAttributes());
        foreach (var method in type.GetMethods().Select(_metadata.GetMethodDefinition)) Read(method);
    }

    private void Read(MethodDefinition method)
    {
        method.DecodeSignature(_names, null);
        Read(method.GetGenericParameters());
        Read(method.GetCustomAttributes());
        foreach (var parameter in method.GetParameters().Select(_metadata.GetParameter)) Read(parameter.GetCustomAttributes());
        if (method.RelativeVirtualAddress == 0) return;
        var body = _file.GetMethodBody(method.RelativeVirtualAddress);
        if (!body.LocalSignature.IsNil) _metadata.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(_names, null);
        foreach (var region in body.ExceptionRegions) Use(region.CatchType);
        Read(body.GetILReader());
    }

    private void Read(GenericParameterHandleCollection parameters)
    {
        foreach (var parameter in parameters.Select(_metadata.GetGenericParameter))
        {
            foreach (var constraint in parameter.GetConstraints()) Use(_metadata.GetGenericParameterConstraint(constraint).Type);
        }
    }

    // A type among an attribute's values stands there by its full name.
    private void Read(CustomAttributeHandleCollection attributes)
    {
        foreach (var attribute in attributes.Select(_metadata.GetCustomAttribute))
        {
            Use(attribute.Constructor);
            foreach (Match name in OurName().Matches(Encoding.Latin1.GetString(_metadata.GetBlobBytes(attribute.Value))))
                _names.Named(name.Value);
        }
    }

    private void Read(BlobReader code)
    {
        foreach (var (_, token) in Instructions.Of(code).Where(one => one.NamesType)) Use(MetadataTokens.EntityHandle(token));
    }

    private void Use(EntityHandle handle)
    {
        if (handle.IsNil) return;
        switch (handle.Kind)
        {
            case HandleKind.TypeDefinition:
                _names.GetTypeFromDefinition(_metadata, (TypeDefinitionHandle)handle, 0);
                break;
            case HandleKind.TypeReference:
                _names.GetTypeFromReference(_metadata, (TypeReferenceHandle)handle, 0);
                break;
            case HandleKind.TypeSpecification:
                _metadata.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(_names, null);
                break;
            case HandleKind.FieldDefinition:
                var field = _metadata.GetFieldDefinition((FieldDefinitionHandle)handle);
                Use(field.GetDeclaringType());
                field.DecodeSignature(_names, null);
                break;
            case HandleKind.MethodDefinition:
                var method = _metadata.GetMethodDefinition((MethodDefinitionHandle)handle);
                Use(method.GetDeclaringType());
                method.DecodeSignature(_names, null);
                break;
            case HandleKind.MemberReference:
                var member = _metadata.GetMemberReference((MemberReferenceHandle)handle);
                Use(member.Parent);
                if (member.GetKind() == MemberReferenceKind.Field) member.DecodeFieldSignature(_names, null);
                else member.DecodeMethodSignature(_names, null);
                break;
            case HandleKind.MethodSpecification:
                var made = _metadata.GetMethodSpecification((MethodSpecificationHandle)handle);
                Use(made.Method);
                made.DecodeSignature(_names, null);
                break;
            default:
                break;
        }
    }

    [GeneratedRegex(@"NightWatch(\.\w+)+")]
    private static partial Regex OurName();
}
