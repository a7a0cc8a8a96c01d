using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>A literal as its compiled method holds it; of an interpolated string, each piece between the holes.</summary>
/// <param name="Type">The type that says it.</param>
/// <param name="Text">The literal.</param>
public sealed record CompiledLiteral(TypeNode Type, string Text);

/// <summary>
/// The literals of an assembly, but for those of an exception that is thrown: these are for the caller's programmer. A constant stands
/// where it is used.
/// </summary>
public static class CompiledLiterals
{
    /// <summary>Those in the assembly of this path, in our own types.</summary>
    public static IReadOnlyList<CompiledLiteral> In(string path)
    {
        using var file = new PEReader(File.OpenRead(path));
        var metadata = file.GetMetadataReader();
        List<CompiledLiteral> all = [];
        foreach (var handle in metadata.TypeDefinitions)
        {
            if (NodeNames.Of(metadata, handle) is not { } type) continue;
            foreach (var method in metadata.GetTypeDefinition(handle).GetMethods().Select(metadata.GetMethodDefinition))
            {
                if (method.RelativeVirtualAddress == 0) continue;
                var code = file.GetMethodBody(method.RelativeVirtualAddress).GetILReader();
                all.AddRange(Said(metadata, code).Select(text => new CompiledLiteral(type, text)));
            }
        }

        return all;
    }

    // What was loaded since the last branch or store goes with whatever comes next: a throw takes its message along.
    private static List<string> Said(MetadataReader metadata, BlobReader code)
    {
        List<string> said = [], loaded = [];
        foreach (var (what, token) in Instructions.Of(code))
        {
            if (what == OpCodes.Ldstr) loaded.Add(metadata.GetUserString((UserStringHandle)MetadataTokens.Handle(token)));
            else if (what == OpCodes.Throw) loaded.Clear();
            else if (Ends(what)) Keep();
        }

        Keep();
        return said;

        void Keep()
        {
            said.AddRange(loaded);
            loaded.Clear();
        }
    }

    private static bool Ends(OpCode what) =>
        what.FlowControl is FlowControl.Branch or FlowControl.Cond_Branch or FlowControl.Return
        || what == OpCodes.Pop || what == OpCodes.Stfld || what == OpCodes.Stsfld
        || what.Name!.StartsWith("stloc", StringComparison.Ordinal);
}
