using System.Text.Json;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>A prior as text: JSON with name, source and, for each set and lead, mean and the lower triangle of its information.</summary>
public static class PriorText
{
    private const int Decimals = 4;

    /// <summary>Writes a prior, its values rounded to four decimals, one entry a line.</summary>
    public static string Write(ChancePrior prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        var lines = prior.All.Select(entry => "    " + JsonSerializer.Serialize(
            new EntryText(entry.Set, entry.Lead, Rounded(entry.Mean), Rounded(entry.Information.Lower)), ChanceJson.Options));
        return $$"""
            {
              "name": {{JsonSerializer.Serialize(prior.Name, ChanceJson.Options)}},
              "source": {{JsonSerializer.Serialize(prior.Source, ChanceJson.Options)}},
              "entries": [
            {{string.Join(",\n", lines)}}
              ]
            }

            """;
    }

    /// <summary>Reads a prior.</summary>
    /// <exception cref="FormatException">It is no such text; the message says why.</exception>
    public static ChancePrior Read(string text)
    {
        try
        {
            var read = JsonSerializer.Deserialize<Whole>(text, ChanceJson.Options) ?? throw new JsonException("it is null.");
            return new ChancePrior(read.Name, read.Source, read.Entries.Select(entry =>
                new PriorEntry(entry.Set, entry.Lead, [.. entry.Mean], SymmetricMatrix.OfLower(entry.Mean.Length, entry.Information))));
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            throw new FormatException($"The prior cannot be read: {wrong.Message}", wrong);
        }
    }

    internal static ChancePrior ReadShipped()
    {
        using var stream = typeof(PriorText).Assembly.GetManifestResourceStream("prior.json")!;
        using var reader = new StreamReader(stream);
        return Read(reader.ReadToEnd());
    }

    private static double[] Rounded(IEnumerable<double> values) => [.. values.Select(value => Math.Round(value, Decimals))];

    private sealed record Whole(string Name, string Source, IReadOnlyList<EntryText> Entries);

    private sealed record EntryText(FigureSet Set, int Lead, double[] Mean, double[] Information);
}
