using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Words.Documents;

/// <summary>
/// Comma-separated values by RFC 4180: CRLF after every record, quotes where a field needs them, a header record first; UTF-8.
/// </summary>
public static class Csv
{
    private static readonly char[] NeedQuotes = ['"', ',', '\r', '\n'];

    /// <summary>A whole file.</summary>
    /// <param name="header">Names of the fields.</param>
    /// <param name="records">Each with as many fields; null is an empty field.</param>
    public static byte[] Write(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<object?>> records)
    {
        var text = new StringBuilder();
        Append(text, header);
        foreach (var record in records) Append(text, record);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Append(StringBuilder text, IEnumerable<object?> fields) =>
        text.AppendJoin(',', fields.Select(field => Quoted(Plain(field)))).Append("\r\n");

    private static string Plain(object? field) => field switch
    {
        null => "",
        string words => words,
        LocalDate date => LocalDatePattern.Iso.Format(date),
        Instant at => InstantText.Of(at),
        double number => number.ToString("0.######", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => throw new ArgumentException($"A field cannot be a {field.GetType()}.", nameof(field)),
    };

    private static string Quoted(string field) =>
        field.IndexOfAny(NeedQuotes) < 0 ? field : "\"" + field.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
