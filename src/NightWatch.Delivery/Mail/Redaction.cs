using System.Text.RegularExpressions;

namespace NightWatch.Delivery.Mail;

/// <summary>Takes people's addresses out of what is logged and kept.</summary>
internal static partial class Redaction
{
    private const int Longest = 300;

    /// <summary>The text on one line, every address shortened to "a***@d***".</summary>
    public static string Of(string text)
    {
        var line = Breaks().Replace(text, " ").Trim();
        var clean = Addresses().Replace(line, address => $"{address.Groups[1].Value[0]}***@{address.Groups[2].Value[0]}***");
        return clean.Length <= Longest ? clean : clean[..Longest] + "…";
    }

    [GeneratedRegex(@"([\p{L}\p{N}._%+\-=/]+)@([\p{L}\p{N}](?:[\p{L}\p{N}.\-]*[\p{L}\p{N}])?)")]
    private static partial Regex Addresses();

    [GeneratedRegex(@"\s*[\r\n\p{Cc}]+\s*")]
    private static partial Regex Breaks();
}
