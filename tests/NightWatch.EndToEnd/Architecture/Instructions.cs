using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>One instruction of a compiled method.</summary>
/// <param name="Code">What it does.</param>
/// <param name="Token">The four bytes behind it, where it has four; else 0.</param>
internal readonly record struct Instruction(OpCode Code, int Token)
{
    /// <summary>Its token is a type, or a member of one.</summary>
    public bool NamesType =>
        Code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType;
}

/// <summary>Reads the code of a method (ECMA-335, III).</summary>
internal static class Instructions
{
    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    /// <summary>All, in order.</summary>
    public static IReadOnlyList<Instruction> Of(BlobReader code)
    {
        List<Instruction> all = [];
        while (code.RemainingBytes > 0)
        {
            short value = code.ReadByte();
            if (value == 0xFE) value = (short)(0xFE00 | code.ReadByte());
            var what = Codes[value];
            all.Add(new Instruction(what, Operand(what.OperandType, ref code)));
        }

        return all;
    }

    private static int Operand(OperandType type, ref BlobReader code)
    {
        switch (type)
        {
            case OperandType.InlineNone:
                return 0;
            case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                code.Offset += 1;
                return 0;
            case OperandType.InlineVar:
                code.Offset += 2;
                return 0;
            case OperandType.InlineI8 or OperandType.InlineR:
                code.Offset += 8;
                return 0;
            case OperandType.InlineSwitch:
                var targets = code.ReadInt32();
                code.Offset += 4 * targets;
                return 0;
            default:
                return code.ReadInt32();
        }
    }
}
