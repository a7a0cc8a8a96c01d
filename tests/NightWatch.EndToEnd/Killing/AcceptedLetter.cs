using System.Security.Cryptography;
using System.Text;

namespace NightWatch.EndToEnd.Killing;

/// <summary>
/// A letter in the mail server's ledger: enough to tell it from every other one, and a copy of it from one with other bytes.
/// </summary>
internal sealed record AcceptedLetter(string Recipient, string MessageId, string Hash)
{
    /// <summary>One line for the ledger.</summary>
    public static string Mark(string text) =>
        $"{Header(text, "To")}\t{Header(text, "Message-Id")}\t{Convert.ToHexStringLower(SHA256.HashData(Encoding.Latin1.GetBytes(text)))}";

    public static AcceptedLetter Of(string mark) =>
        mark.Split('\t') is [var to, var id, var hash]
            ? new(to, id, hash)
            : throw new FormatException($"'{mark}' is no line of the ledger.");

    private static string Header(string text, string name)
    {
        var line = text.Split("\r\n").FirstOrDefault(line => line.StartsWith(name + ":", StringComparison.OrdinalIgnoreCase)) ?? "";
        return line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim().TrimStart('<').TrimEnd('>');
    }
}
