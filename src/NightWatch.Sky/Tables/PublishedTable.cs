using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace NightWatch.Sky.Tables;

/// <summary>A table of published coefficients, kept beside this file and embedded in the assembly. Provenance: Tables/README.md.</summary>
internal static class PublishedTable
{
    /// <summary>The rows of a table, once its digest and its length have been checked.</summary>
    /// <exception cref="InvalidDataException">The embedded bytes are not the table that this code was written for.</exception>
    public static string[][] Rows(string name, int count, string sha256)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidDataException($"Table {name} is missing from the assembly.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return Parse(name, bytes, count, sha256);
    }

    internal static string[][] Parse(string name, byte[] bytes, int count, string sha256)
    {
        var digest = Convert.ToHexStringLower(SHA256.HashData(bytes));
        if (digest != sha256) throw new InvalidDataException($"Table {name} has digest {digest}; expected {sha256}.");
        var rows = Encoding.ASCII.GetString(bytes)
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Where(line => line[0] != '#')
            .Select(line => line.Split('\t'))
            .ToArray();
        return rows.Length == count
            ? rows
            : throw new InvalidDataException($"Table {name} has {rows.Length} rows; expected {count}.");
    }

    /// <summary>A field as a number.</summary>
    public static double Number(string field) => double.Parse(field, NumberStyles.Float, CultureInfo.InvariantCulture);
}
